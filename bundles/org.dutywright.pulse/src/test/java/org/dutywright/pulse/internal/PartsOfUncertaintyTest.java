// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.InstrumentErrors;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.RecorderSettings;
import org.dutywright.pulse.Uncertain;
import org.junit.jupiter.api.Test;

/** The parts that budgets are made of, each against a closed form. */
class PartsOfUncertaintyTest {
    private static final double STEP = 1e-5;

    private static double kept(double samplesAPeriod, int edges) {
        SamplingPhases phases = new SamplingPhases(STEP);
        for (int i = 0; i < edges; i++) {
            // what a recorder sees of an instant edge: the middle between two samples
            phases.add((Math.floor(0.3 + i * samplesAPeriod) + 0.5) * STEP);
        }
        return phases.keptSeconds();
    }

    @Test
    void rounding_without_scatter_leaves_a_rectangle_and_scatter_of_a_step_nothing() {
        assertThat(Dither.remaining(2, 0)).isCloseTo(2 / Math.sqrt(12), within(1e-12));
        // first term of the series: step / (pi sqrt(2)) exp(-2 (pi s / step)^2)
        assertThat(Dither.remaining(2, 0.8))
                .isCloseTo(2 / Math.PI / Math.sqrt(2) * Math.exp(-2 * Math.pow(Math.PI * 0.4, 2)), within(1e-6));
        assertThat(Dither.proven(2, 0.9)).isZero();
        assertThat(Dither.proven(2, 2)).isCloseTo(Math.sqrt(3), within(1e-12));
    }

    @Test
    void edges_at_the_same_place_between_samples_keep_their_whole_error() {
        assertThat(kept(500, 200)).isCloseTo(STEP / Math.sqrt(12), within(1e-9));
        assertThat(kept(500, 1)).isCloseTo(STEP / Math.sqrt(12), within(1e-9));
    }

    @Test
    void edges_that_wander_keep_little_and_edges_at_two_places_half() {
        // the golden ratio covers all places most evenly; a fiftieth of a step is left by the lines through 32 edges
        assertThat(kept(500 + (Math.sqrt(5) - 1) / 2, 200)).isLessThan(STEP / 50);
        // at two places half a step apart the mean error is that of a grid of half the step
        assertThat(kept(500.5, 200)).isCloseTo(STEP / 2 / Math.sqrt(12), within(STEP / 50));
    }

    @Test
    void noise_of_one_pole_has_the_number_of_independent_samples_of_its_closed_form() {
        Random random = new Random(5);
        PlateauScatter scatter = new PlateauScatter(10);
        double keep = 0.7;
        double noise = 0;
        for (int pulse = 0; pulse < 2000; pulse++) {
            Pulse one = new Pulse();
            one.plateauSamples = 400;
            double sum = 0;
            for (int i = 0; i < 400; i++) {
                noise = keep * noise + Math.sqrt(1 - keep * keep) * 0.01 * random.nextGaussian();
                sum += noise;
            }
            one.plateau = sum / 400;
            scatter.add(one);
        }
        // (1 + r) / (1 - r) = 5.667 for long means; 2000 differences tell a variance to sqrt(3 / 2000) = 4 %, three
        // times that
        assertThat(scatter.samplesPerIndependent(0.01)).isCloseTo(1.7 / 0.3, within(0.7));
    }

    @Test
    void what_is_missing_to_a_level_follows_from_the_run_of_its_plateau() {
        // one time constant: mean deviation 1 - 1/e, run of the least-squares line 12 (1 - 2/e - (1 - 1/e) / 2)
        double e = Math.exp(-1);
        double expected = (1 - e) / Math.abs(12 * (1 - 2 * e - (1 - e) / 2));
        assertThat(Settling.shareOfRun(10, 10 * Math.log(9))).isCloseTo(expected, within(1e-9));
    }

    @Test
    void stated_errors_of_the_recorder_widen_voltages_and_nothing_else() {
        PulseSettings settings =
                PulseSettings.defaults().with(RecorderSettings.GAIN_ERROR, 1).with(RecorderSettings.OFFSET_ERROR, 0.05);
        Uncertain reading = new Uncertain(12, 0, 0, Budget.NONE);
        // two rectangles of half-widths 0.12 V and 0.05 V
        assertThat(InstrumentErrors.of(settings, "V").with(reading).u())
                .isCloseTo(Math.hypot(0.12, 0.05) / Math.sqrt(3), within(1e-12));
        assertThat(InstrumentErrors.of(settings, "A").isStated()).isFalse();
        assertThat(InstrumentErrors.of(PulseSettings.defaults(), "V").with(reading))
                .isEqualTo(reading);
    }
}
