// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class ShapesTest {

    // A few units in the last place of numbers near 10.
    private static final double ROUNDING = 1e-14;

    @Test
    void aRampIsAStraightLine() {
        EdgeShape ramp = new EdgeShape.Ramp(100e-6);
        // closed form: 1 V + 10 V · t / 100 µs
        assertThat(ramp.volts(1, 11, 10, 0)).isEqualTo(1);
        assertThat(ramp.volts(1, 11, 10, 25e-6)).isCloseTo(3.5, within(ROUNDING));
        assertThat(ramp.volts(1, 11, 10, 100e-6)).isEqualTo(11);
        assertThat(ramp.volts(1, 11, 10, 1)).isEqualTo(11);
        assertThat(ramp.leadSeconds()).isCloseTo(50e-6, within(1e-20));
    }

    @Test
    void aRampOverHalfTheSwingTakesHalfTheTime() {
        EdgeShape ramp = new EdgeShape.Ramp(100e-6);
        assertThat(ramp.volts(1, 6, 10, 25e-6)).isCloseTo(3.5, within(ROUNDING));
        assertThat(ramp.volts(1, 6, 10, 50e-6)).isEqualTo(6);
    }

    @Test
    void aRampWithoutDurationIsAStep() {
        assertThat(new EdgeShape.Ramp(0).volts(1, 11, 10, 0)).isEqualTo(11);
    }

    @Test
    void anExponentialPassesHalfWayAfterLn2TimeConstants() {
        EdgeShape edge = new EdgeShape.Exponential(10e-6);
        // closed form: ln 2 = 0.693147, t(10..90 %) = ln 9 = 2.197225 time constants
        assertThat(edge.leadSeconds()).isCloseTo(6.93147e-6, within(1e-11));
        assertThat(edge.volts(0, 10, 10, edge.leadSeconds())).isCloseTo(5, within(ROUNDING));
        double tenPercent = 10e-6 * Math.log(10 / 9.0);
        assertThat(edge.volts(0, 10, 10, tenPercent)).isCloseTo(1, within(ROUNDING));
        assertThat(edge.volts(0, 10, 10, tenPercent + 21.97225e-6)).isCloseTo(9, within(1e-5));
        assertThat(edge.volts(0, 10, 10, 1)).isEqualTo(10);
    }

    @Test
    void aProfileIsStraightBetweenItsPointsAndConstantOutside() {
        Profile profile = new Profile(List.of(
                new Profile.Point(1, 10),
                new Profile.Point(3, 30),
                new Profile.Point(3, 50),
                new Profile.Point(4, 50)));
        assertThat(profile.at(-5)).isEqualTo(10);
        assertThat(profile.at(1)).isEqualTo(10);
        assertThat(profile.at(2)).isEqualTo(20);
        assertThat(profile.at(3)).as("the later of two points at one instant").isEqualTo(50);
        assertThat(profile.at(3.5)).isEqualTo(50);
        assertThat(profile.at(99)).isEqualTo(50);
    }

    @Test
    void aProfileWhoseTimeRunsBackwardsIsRefused() {
        assertThatThrownBy(() -> new Profile(List.of(new Profile.Point(2, 0), new Profile.Point(1, 0))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("point 2");
    }

    @Test
    void aConverterRoundsToItsCodesAndClipsAtItsRange() {
        Quantisation steps = Quantisation.ofBits(3, -4, 4);
        assertThat(steps.stepVolts()).isEqualTo(1);
        assertThat(steps.quantise(1.4)).isEqualTo(1);
        assertThat(steps.quantise(1.6)).isEqualTo(2);
        assertThat(steps.quantise(-9)).isEqualTo(-4);
        // 8 codes from -4 on: the highest is 3.
        assertThat(steps.quantise(9)).isEqualTo(3);
        assertThat(Quantisation.ofStep(0.25).quantise(-0.4)).isEqualTo(-0.5);
    }
}
