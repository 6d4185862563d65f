// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.tests;

import static org.assertj.core.api.Assertions.assertThat;

import org.dutywright.workbench.TraceColours;
import org.eclipse.swt.graphics.RGB;
import org.junit.jupiter.api.Test;

final class TraceColoursTest {
    // WCAG 2.1, success criterion 1.4.11: graphical objects have a contrast of at least 3:1
    private static final double LEAST_CONTRAST = 3;

    @Test
    void the_first_two_are_bluish_green_and_vermillion_of_okabe_and_ito() {
        RGB white = new RGB(255, 255, 255);

        assertThat(TraceColours.of(0, white)).isEqualTo(new RGB(0x00, 0x9E, 0x73));
        assertThat(TraceColours.of(1, white)).isEqualTo(new RGB(0xD5, 0x5E, 0x00));
    }

    @Test
    void every_colour_stands_out_on_white_and_on_the_dark_ground() {
        for (RGB ground : new RGB[] {new RGB(255, 255, 255), new RGB(0x2F, 0x2F, 0x2F), new RGB(0x1E, 0x1F, 0x22)}) {
            for (int channel = 0; channel < 4; channel++) {
                assertThat(contrast(TraceColours.of(channel, ground), ground))
                        .as("channel %d on %s", channel, ground)
                        .isGreaterThanOrEqualTo(LEAST_CONTRAST);
            }
        }
    }

    // contrast ratio and relative luminance as WCAG 2.1 defines them
    private static double contrast(RGB one, RGB other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(RGB colour) {
        return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
    }

    private static double linear(int part) {
        double share = part / 255.0;
        return share <= 0.03928 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }
}
