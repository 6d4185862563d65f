// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.dutywright.diagnosis.ListCycles;
import org.dutywright.diagnosis.internal.suspects.CarrierPhase.Verdict;
import org.dutywright.pulse.Cycle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CarrierPhaseTest {
    private static final double PERIOD = 0.005;

    // Closed form: the second carrier starts so many cycles later than in step.
    @ParameterizedTest
    @CsvSource({"0, KEPT", "0.02, KEPT", "-0.02, KEPT", "0.04, UNTOLD", "0.1, BROKEN", "-0.3, BROKEN", "0.5, BROKEN"})
    void theResidualIsWhatTheCarrierIsOutOfStep(double cycles, Verdict verdict) throws IOException {
        CarrierPhase phase = across(cycles, 0, 40, 0.051, 1).orElseThrow();
        // Half a cycle later and half a cycle earlier are the same.
        assertThat(Math.abs(phase.residualCycles())).isCloseTo(Math.abs(cycles), within(1e-6));
        assertThat(phase.verdict()).isEqualTo(verdict);
    }

    @Test
    void jitterNeverMakesACarrierThatRanOnLookRestarted() throws IOException {
        for (int seed = 0; seed < 300; seed++) {
            // 30 us on each edge, 0.6 % of the period; interruptions of 2 to 30 cycles.
            CarrierPhase phase =
                    across(0, 30e-6, 40, 0.011 + 0.0005 * seed, seed).orElseThrow();
            assertThat(phase.verdict()).as("seed %d: %s", seed, phase).isNotEqualTo(Verdict.BROKEN);
        }
    }

    @Test
    void aRestartLooksInStepOnlyAsOftenAsChanceGives() throws IOException {
        Random random = new Random(5);
        int kept = 0;
        for (int seed = 0; seed < 1000; seed++) {
            CarrierPhase phase =
                    across(random.nextDouble(), 2e-6, 40, 0.051, seed).orElseThrow();
            kept += phase.verdict() == Verdict.KEPT ? 1 : 0;
        }
        // 0.03 of a cycle either way: 60 of 1000, with a standard deviation of 7.5 (binomial).
        assertThat(kept).isBetween(30, 90);
    }

    @Test
    void strongJitterOverALongInterruptionTellsNothing() throws IOException {
        assertThat(across(0.4, 400e-6, 40, 0.51, 3).orElseThrow().verdict()).isEqualTo(Verdict.UNTOLD);
    }

    @Test
    void aShortSideTakesItsPeriodFromTheOther() throws IOException {
        CarrierPhase phase = across(0.25, 0, 3, 0.051, 1).orElseThrow();
        assertThat(phase.residualCycles()).isCloseTo(0.25, within(1e-6));
        assertThat(across(0.25, 0, 1, 0.051, 1)).isEmpty();
    }

    @Test
    void aCarrierOfAnotherPeriodCannotBeCountedAcross() throws IOException {
        List<Cycle> cycles = new ArrayList<>();
        add(cycles, 0, PERIOD, 40, 0, new Random(1));
        add(cycles, 0.25, PERIOD * 1.02, 40, 0, new Random(1));
        assertThat(CarrierPhase.across(new ListCycles(cycles), PERIOD, new Span(0.2, 0.249))
                        .orElseThrow()
                        .verdict())
                .isEqualTo(Verdict.UNTOLD);
    }

    /** 40 cycles, an interruption, and cycles that are so many cycles out of step. */
    private static Optional<CarrierPhase> across(
            double outOfStepCycles, double jitterSeconds, int cyclesAfter, double gapSeconds, long seed)
            throws IOException {
        Random random = new Random(seed);
        List<Cycle> cycles = new ArrayList<>();
        add(cycles, 0, PERIOD, 40, jitterSeconds, random);
        double end = 40 * PERIOD;
        double next = PERIOD * (Math.ceil((end + gapSeconds) / PERIOD) + 1 + outOfStepCycles);
        add(cycles, next, PERIOD, cyclesAfter, jitterSeconds, random);
        // The first cycle after the interruption's end is left out; place the end right before one.
        return CarrierPhase.across(new ListCycles(cycles), PERIOD, new Span(end, next - PERIOD * 1.01));
    }

    private static void add(
            List<Cycle> cycles, double first, double period, int count, double jitterSeconds, Random random) {
        double start = first + jitterSeconds * random.nextGaussian();
        for (int i = 0; i < count; i++) {
            double next = first + (i + 1) * period + jitterSeconds * random.nextGaussian();
            cycles.add(new Cycle(cycles.size(), start, next - start, (next - start) / 4, 0, false));
            start = next;
        }
    }
}
