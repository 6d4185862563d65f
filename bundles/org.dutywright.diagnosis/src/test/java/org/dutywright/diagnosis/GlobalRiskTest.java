// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.dutywright.sensor.Sensor.Decision;
import org.dutywright.sensor.Sensor.Decision.Rule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Global risks after JCGM 106:2012, clause 9.5, from memory: of all items made, which share is accepted wrongly (R_C) or
 * rejected wrongly (R_P). The risk is integrated over the production; whether a measured value is accepted comes from
 * {@link Conformity}. Expected values are recomputed from the closed form with SciPy, given to 6 decimals; those of the
 * guide's resistors round to its own 0.01 and 0.07.
 */
class GlobalRiskTest {
    private static final int STEPS = 20_000;

    /** An item made, with the share of all items that are like it. */
    private record Production(DoubleUnaryOperator density, double from, double to) {
        static Production normal(double mean, double sd) {
            NormalDistribution normal = new NormalDistribution(null, mean, sd);
            return new Production(normal::density, mean - 9 * sd, mean + 9 * sd);
        }

        // Simpson's rule over a span on which the integrand is smooth
        static double integral(DoubleUnaryOperator of, double from, double to) {
            double sum = 0;
            double step = (to - from) / STEPS;
            for (int i = 0; i <= STEPS; i++) {
                double weight = i == 0 || i == STEPS ? 1 : i % 2 == 1 ? 4 : 2;
                sum += weight * of.applyAsDouble(from + i * step);
            }
            return sum * step / 3;
        }

        double accepted(OptionalDouble lower, OptionalDouble upper, double u, double from, double to) {
            return integral(eta -> density.applyAsDouble(eta) * Conformity.probability(eta, u, lower, upper), from, to);
        }

        double rejected(OptionalDouble lower, OptionalDouble upper, double u, double from, double to) {
            return integral(
                    eta -> density.applyAsDouble(eta) * (1 - Conformity.probability(eta, u, lower, upper)), from, to);
        }
    }

    /** Where the guarded rule stops to accept, found from its decisions alone. */
    private static double acceptanceLimit(double limit, double inside, double u, double coverage) {
        Decision decision = new Decision(Rule.GUARDED_ACCEPTANCE, coverage);
        OptionalDouble lower = inside > limit ? OptionalDouble.of(limit) : OptionalDouble.empty();
        OptionalDouble upper = inside > limit ? OptionalDouble.empty() : OptionalDouble.of(limit);
        double good = inside;
        double bad = limit + (limit - inside);
        for (int i = 0; i < 80; i++) {
            double middle = good + (bad - good) / 2;
            if (Conformity.decide(middle, u, lower, upper, decision) == LineResult.PASS) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        return good;
    }

    // guard band = coverage x u with u 0.04 ohm: 0.02, 0 and 0.08 ohm
    @ParameterizedTest
    @CsvSource({"0.5, 0.009878, 0.069027", "0, 0.018942, 0.037208", "2, 0.000469, 0.247670"})
    void theGuardedRuleHasTheRisksOfTheGuidesResistors(double coverage, double consumer, double producer) {
        Production production = Production.normal(1500, 0.12);
        double lowest = acceptanceLimit(1499.8, 1500, 0.04, coverage);
        double highest = acceptanceLimit(1500.2, 1500, 0.04, coverage);
        OptionalDouble lower = OptionalDouble.of(lowest);
        OptionalDouble upper = OptionalDouble.of(highest);
        double wrongly = production.accepted(lower, upper, 0.04, production.from(), 1499.8)
                + production.accepted(lower, upper, 0.04, 1500.2, production.to());
        assertThat(wrongly).isCloseTo(consumer, within(1e-6));
        assertThat(production.rejected(lower, upper, 0.04, 1499.8, 1500.2)).isCloseTo(producer, within(1e-6));
    }

    @Test
    void ofTheGuidesResistorsSoManyConform() {
        assertThat(Conformity.probability(1500, 0.12, OptionalDouble.of(1499.8), OptionalDouble.of(1500.2)))
                .isCloseTo(0.904419, within(1e-6));
    }

    // The guide's ball bearings, 9.5.4: gamma(4, 1/4 um), limit 2 um, u 0.25 um. A guard band of 0.328171 um is
    // 1.312684 u.
    @ParameterizedTest
    @CsvSource({"0, 0.008019, 0.017445", "1.312684, 0.001, 0.075494"})
    void theGuardedRuleHasTheRisksOfTheGuidesBallBearings(double coverage, double consumer, double producer) {
        GammaDistribution gamma = new GammaDistribution(null, 4, 0.25);
        Production production = new Production(gamma::density, 0, 12);
        OptionalDouble upper = OptionalDouble.of(acceptanceLimit(2, 0, 0.25, coverage));
        OptionalDouble none = OptionalDouble.empty();
        assertThat(production.accepted(none, upper, 0.25, 2, 12)).isCloseTo(consumer, within(1e-6));
        assertThat(production.rejected(none, upper, 0.25, 0, 2)).isCloseTo(producer, within(1e-6));
    }

    // Normal production of which itp percent conform, limits +-1, u a quarter of its spread: false accepts in percent,
    // as the
    // test of a public uncertainty calculator quotes them from a draft of a recommended practice.
    @ParameterizedTest
    @CsvSource({"60, 4.83860", "70, 3.92234", "80, 2.85583", "90, 1.59995", "95, 0.87101", "99, 0.19992"})
    void theSimpleRuleAcceptsWronglyAsTabulated(double conforming, double percent) {
        double spread = 1 / new NormalDistribution(null, 0, 1).inverseCumulativeProbability((1 + conforming / 100) / 2);
        Production production = Production.normal(0, spread);
        OptionalDouble lower = OptionalDouble.of(-1);
        OptionalDouble upper = OptionalDouble.of(1);
        double wrongly = production.accepted(lower, upper, spread / 4, production.from(), -1)
                + production.accepted(lower, upper, spread / 4, 1, production.to());
        assertThat(100 * wrongly).isCloseTo(percent, within(1e-5));
    }
}
