// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.Budget.Shape;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Budgets and their intervals against worked examples of JCGM 100:2008 and closed forms. */
class BudgetTest {
    // JCGM 100:2008, H.1 (end gauge): contributions in nm with their degrees of freedom
    private static final Budget END_GAUGE = Budget.of(
            Component.typeA("calibration of the standard", 25, 18),
            Component.typeA("measured difference", 9.7, 25.6),
            Component.typeA("difference in expansion", 2.9, 50),
            Component.typeA("difference in temperature", 16.6, 2));

    @Test
    void the_end_gauge_of_annex_h1_has_its_uncertainty_and_degrees_of_freedom() {
        // printed: u = 32 nm (31.7 before rounding), nu_eff = 16.7 there from less rounded inputs, 16 when truncated
        assertThat(END_GAUGE.u()).isCloseTo(31.7, within(0.05));
        assertThat(END_GAUGE.effectiveDegreesOfFreedom()).isEqualTo(16);
    }

    @Test
    void the_end_gauge_of_annex_h1_has_its_interval_of_99_percent() {
        // printed: t99(16) = 2.92, U99 = 93 nm from u rounded to 32 nm; unrounded 92.6
        assertThat(Coverage.studentFactor(16, 0.99)).isCloseTo(2.92, within(0.005));
        assertThat(Coverage.halfWidth(END_GAUGE, 0.99)).isCloseTo(93, within(0.6));
    }

    @Test
    void the_example_of_g41_has_19_degrees_of_freedom_and_its_interval() {
        // JCGM 100:2008, G.4.1: relative standard uncertainties in percent from 10, 5 and 15 observations
        Budget budget = Budget.of(
                Component.typeA("first", 0.25, 9),
                Component.typeA("second", 0.57, 4),
                Component.typeA("third", 0.82, 14));
        assertThat(budget.u()).isCloseTo(1.03, within(0.005));
        // 18.996: printed as 19.0, truncated here
        assertThat(budget.effectiveDegreesOfFreedom()).isBetween(18.0, 19.0);
        assertThat(Coverage.studentFactor(19, 0.95)).isCloseTo(2.09, within(0.005));
        assertThat(budget.u95()).isCloseTo(2.2, within(0.05));
    }

    @ParameterizedTest
    @CsvSource({
        "1, 12.71, 13.97",
        "2, 4.30, 4.53",
        "5, 2.57, 2.65",
        "10, 2.23, 2.28",
        "20, 2.09, 2.13",
        "50, 2.01, 2.05"
    })
    void students_factors_are_those_of_table_g2(double degrees, double at95, double at9545) {
        // JCGM 100:2008, table G.2, printed with two decimals
        assertThat(Coverage.studentFactor(degrees, 0.95)).isCloseTo(at95, within(0.00501));
        assertThat(Coverage.studentFactor(degrees, 0.9545)).isCloseTo(at9545, within(0.00501));
    }

    @Test
    void a_rectangle_alone_has_95_percent_of_its_half_width() {
        Budget budget = Budget.of(Component.rectangular("bounds", 2));
        // JCGM 100, 4.3.7: u = a / sqrt(3); the interval in closed form: 0.95 a
        assertThat(budget.u()).isCloseTo(2 / Math.sqrt(3), within(1e-12));
        assertThat(budget.u95()).isCloseTo(1.9, within(1e-9));
    }

    @Test
    void two_equal_rectangles_make_a_triangle() {
        Budget budget = Budget.of(Component.rectangular("one", 1), Component.rectangular("other", 1));
        // P(|x| < h) = 1 - (2 - h)^2 / 4 for the triangle over -2 to 2
        assertThat(budget.u95()).isCloseTo(2 - Math.sqrt(4 * 0.05), within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"1, 0, 0.2", "1, 0, 1", "1, 0.5, 0.3", "1, 1, 1", "3, 0.2, 0.7"})
    void the_interval_of_a_mixture_holds_95_percent_of_drawn_errors(double a, double b, double sigma) {
        Budget budget = Budget.of(
                Component.rectangular("first", a),
                Component.rectangular("second", b),
                Component.normal("noise", sigma));
        double half = budget.u95();
        Random random = new Random(20);
        int draws = 200_000;
        int inside = 0;
        for (int i = 0; i < draws; i++) {
            double error = a * (2 * random.nextDouble() - 1)
                    + b * (2 * random.nextDouble() - 1)
                    + sigma * random.nextGaussian();
            inside += Math.abs(error) <= half ? 1 : 0;
        }
        // four standard deviations of a binomial share: sqrt(0.95 0.05 / 200,000) = 0.00049
        assertThat((double) inside / draws).isCloseTo(0.95, within(0.002));
    }

    @Test
    void a_normal_budget_has_the_normal_factor_and_few_observations_a_larger_one() {
        assertThat(Budget.of(Component.normal("known", 1)).u95()).isCloseTo(1.959964, within(1e-6));
        assertThat(Budget.of(Component.typeA("two observations", 1, 1)).u95()).isCloseTo(12.706, within(1e-3));
    }

    @Test
    void table_1_of_4_4_3_is_reproduced() {
        // JCGM 100:2008, 4.4.3, table 1: twenty temperatures in degrees Celsius
        double[] celsius = {
            96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95,
            101.11, 101.20, 101.57, 101.84, 102.36, 102.72
        };
        double mean = 0;
        for (double value : celsius) {
            mean += value / celsius.length;
        }
        double squares = 0;
        for (double value : celsius) {
            squares += (value - mean) * (value - mean);
        }
        double u = Math.sqrt(squares / (celsius.length - 1) / celsius.length);
        Uncertain result =
                Budget.of(Component.typeA("scatter", u, celsius.length - 1)).around(mean);
        // printed: 100.14 (100.145), 1.49, 0.33
        assertThat(result.value()).isCloseTo(100.145, within(1e-9));
        assertThat(result.u()).isCloseTo(0.332916, within(1e-6));
        assertThat(result.u95()).isCloseTo(2.093 * 0.332916, within(1e-4));
    }

    @Test
    void the_largest_component_is_named_and_those_of_nothing_are_left_out() {
        Budget budget = Budget.of(
                Component.normal("nothing", 0), Component.normal("noise", 1), Component.rectangular("clock", 3));
        assertThat(budget.components()).hasSize(2);
        assertThat(budget.dominant().orElseThrow().name()).isEqualTo("clock");
        assertThat(budget.times(-2).u()).isCloseTo(2 * budget.u(), within(1e-12));
        assertThat(budget.dominant().orElseThrow().shape()).isEqualTo(Shape.RECTANGULAR);
        assertThat(Budget.NONE.u95()).isZero();
    }
}
