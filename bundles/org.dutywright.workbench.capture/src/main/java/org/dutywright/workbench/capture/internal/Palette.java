// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import org.dutywright.workbench.TraceColours;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.RGB;

/**
 * Colours of a plot. All follow from the colours that the theme gives the editor's ground, so light and dark need no
 * settings of their own.
 *
 * @param ground background
 * @param text colour of text and of what marks a place
 * @param grid colour of lines that help the eye
 */
record Palette(Color ground, Color text, Color grid) {
    private static final int GRID_PERCENT = 18;
    private static final RGB LIGHT_TEXT = new RGB(0xE6, 0xE6, 0xE6);
    private static final RGB DARK_TEXT = new RGB(0x20, 0x20, 0x20);

    static Palette on(Color ground) {
        RGB text = TraceColours.isDark(ground.getRGB()) ? LIGHT_TEXT : DARK_TEXT;
        return new Palette(ground, new Color(text), new Color(mixed(text, ground.getRGB())));
    }

    Color trace(int channel) {
        return new Color(TraceColours.of(channel, ground.getRGB()));
    }

    /** Width of a channel's trace in pixels: the first is thicker, so that colour is not the only difference. */
    static int traceWidth(int channel) {
        return channel == 0 ? 2 : 1;
    }

    private static RGB mixed(RGB front, RGB ground) {
        return new RGB(mixed(front.red, ground.red), mixed(front.green, ground.green), mixed(front.blue, ground.blue));
    }

    private static int mixed(int front, int ground) {
        return (front * GRID_PERCENT + ground * (100 - GRID_PERCENT)) / 100;
    }
}
