// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.coverage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A small version of the study: fails when intervals hold the truth less often than they say. */
class CoverageTest {
    private static final int CAPTURES = 120;

    private static Corner corner(String name) {
        return Corners.ALL.stream()
                .filter(it -> it.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "plain",
                "noise-alike",
                "instant-locked",
                "pull-up",
                "unsettled",
                "codes-only",
                "jitter",
                "recorder-stated",
                "input-low-instant",
                "ringing",
                "ringing-fine"
            })
    void intervals_hold_the_truth_as_often_as_they_say(String name) throws IOException {
        Map<Quantity, Tally> tallies = CoverageStudy.tally(corner(name), CAPTURES);
        assertThat(tallies).hasSize(Quantity.values().length);
        // 95 % less three standard deviations of a binomial share of 120: 3 sqrt(0.95 0.05 / 120) = 6 points
        tallies.forEach((quantity, tally) ->
                assertThat(tally.coverage()).as(quantity.words()).isGreaterThan(0.89));
    }

    @Test
    void intervals_are_no_wider_than_the_noise_that_makes_them() throws IOException {
        Map<Quantity, Tally> tallies = CoverageStudy.tally(corner("jitter"), CAPTURES);
        // the RMS of errors in standard uncertainties is 1 where the budget is exact; of 120 values it scatters by
        // 1 / sqrt(240) = 0.065, three times that
        for (Quantity quantity : new Quantity[] {Quantity.DUTY, Quantity.LOW_LEVEL, Quantity.HIGH_LEVEL}) {
            assertThat(tallies.get(quantity).rms()).as(quantity.words()).isCloseTo(1, within(0.2));
        }
    }

    @ParameterizedTest
    @EnumSource(Form.class)
    void forms_are_what_they_say(Form form) {
        // 10 to 90 % duration, and the integral by the trapezoidal rule: its error is h^2 / 12 times the change of
        // slope
        assertThat(form.inverse(0.9) - form.inverse(0.1)).isCloseTo(form.duration(), within(1e-9));
        double sum = 0;
        double step = 1e-3;
        for (int i = 0; i < 12_000; i++) {
            sum += step * (form.share(i * step) + form.share((i + 1) * step)) / 2;
        }
        assertThat(form.integral(12)).isCloseTo(sum, within(1e-6));
    }
}
