// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.dutywright.sensor.Sensor.Decision;
import org.dutywright.sensor.Sensor.Decision.Rule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConformityTest {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    // JCGM 106:2012, from memory, its Zener diode and burst pressure examples; probabilities recomputed from the
    // closed form with SciPy, given to 6 decimals.
    @Test
    void oneSidedLimitsGiveTheProbabilitiesOfTheGuide() {
        assertThat(Conformity.probability(-5.47, 0.05, NONE, OptionalDouble.of(-5.40)))
                .isCloseTo(0.919243, within(1e-6));
        assertThat(Conformity.probability(509.7, 8.6, OptionalDouble.of(490), NONE))
                .isCloseTo(0.989010, within(1e-6));
    }

    // Closed form with SciPy: interval 0 to 1 and u = 1 / (4 capability), given to 6 decimals.
    @ParameterizedTest
    @CsvSource({
        "1, 0.5, 0.954500",
        "1, 0.25, 0.839995",
        "1, 0, 0.499968",
        "1, -0.1, 0.344573",
        "4, 0.5, 1.000000",
        "4, 0.1, 0.945201",
        "4, 0.05, 0.788145",
        "4, 0, 0.500000"
    })
    void twoSidedLimitsGiveTheClosedForm(double capability, double measured, double expected) {
        double u = 1 / (4 * capability);
        assertThat(Conformity.probability(measured, u, OptionalDouble.of(0), OptionalDouble.of(1)))
                .isCloseTo(expected, within(1e-6));
    }

    // Closed form with SciPy: 1 - Phi(g / u) with the value on the acceptance limit.
    @ParameterizedTest
    @CsvSource({"0, 0.5", "1, 0.158655", "1.645, 0.049985", "1.96, 0.024998", "2, 0.022750", "3, 0.001350"})
    void theRiskOnTheAcceptanceLimitFallsWithTheGuardBand(double guard, double risk) {
        assertThat(1 - Conformity.probability(10 - guard, 1, NONE, OptionalDouble.of(10)))
                .isCloseTo(risk, within(1e-6));
    }

    @Test
    void withoutUncertaintyTheProbabilityIsZeroOrOneAndTheLimitIsInside() {
        assertThat(Conformity.probability(10, 0, NONE, OptionalDouble.of(10))).isEqualTo(1);
        assertThat(Conformity.probability(10.001, 0, NONE, OptionalDouble.of(10)))
                .isEqualTo(0);
    }

    @Test
    void withoutLimitsEverythingConforms() {
        assertThat(Conformity.probability(1e6, 3, NONE, NONE)).isEqualTo(1);
    }

    // Limits 180 to 220, u = 2, coverage 2: the guard band is 4 wide.
    @ParameterizedTest
    @CsvSource({
        "200, PASS, PASS, PASS",
        "216, PASS, PASS, PASS",
        "184, PASS, PASS, PASS",
        "216.001, PASS, FAIL, INCONCLUSIVE",
        "220, PASS, FAIL, INCONCLUSIVE",
        "220.001, FAIL, FAIL, INCONCLUSIVE",
        "223.999, FAIL, FAIL, INCONCLUSIVE",
        "224, FAIL, FAIL, FAIL",
        "183.999, PASS, FAIL, INCONCLUSIVE",
        "176.001, FAIL, FAIL, INCONCLUSIVE",
        "176, FAIL, FAIL, FAIL",
        "100, FAIL, FAIL, FAIL"
    })
    void eachRuleDecidesByItsGuardBand(double measured, LineResult simple, LineResult guarded, LineResult threeWay) {
        assertThat(decide(measured, 2, Rule.SIMPLE)).isEqualTo(simple);
        assertThat(decide(measured, 2, Rule.GUARDED_ACCEPTANCE)).isEqualTo(guarded);
        assertThat(decide(measured, 2, Rule.THREE_WAY)).isEqualTo(threeWay);
    }

    @Test
    void anIntervalNarrowerThanItsGuardBandsIsNeverPassed() {
        Decision decision = new Decision(Rule.THREE_WAY, 2);
        assertThat(Conformity.decide(200, 20, OptionalDouble.of(180), OptionalDouble.of(220), decision))
                .isEqualTo(LineResult.INCONCLUSIVE);
    }

    @ParameterizedTest
    @CsvSource({"SIMPLE", "GUARDED_ACCEPTANCE", "THREE_WAY"})
    void withoutUncertaintyAllRulesAgreeAndTheLimitIsInside(Rule rule) {
        assertThat(decide(220, 0, rule)).isEqualTo(LineResult.PASS);
        assertThat(decide(220.001, 0, rule)).isEqualTo(LineResult.FAIL);
    }

    @Test
    void anUncertaintyThatIsNoNumberIsRefused() {
        assertThatThrownBy(() -> decide(200, Double.NaN, Rule.SIMPLE)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> decide(200, -1, Rule.SIMPLE)).hasMessageContaining("-1");
    }

    private static LineResult decide(double measured, double u, Rule rule) {
        return Conformity.decide(measured, u, OptionalDouble.of(180), OptionalDouble.of(220), new Decision(rule, 2));
    }
}
