// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.SensorChannel;
import org.junit.jupiter.api.Test;

class CheckerLinesTest {
    @Test
    void aHealthyPairConformsWithALineForEachLimitAndEachKindOfEvent() throws IOException {
        CheckResult result = Checks.check(
                Sensors.twin(),
                Checks.supply(13.8),
                signal1().build(),
                signal2().build());

        assertThat(result.verdict()).isEqualTo(Verdict.CONFORMS);
        assertThat(Checks.lines(result).keySet())
                .containsExactly(
                        "signal1.signal",
                        "signal1.frequency",
                        "signal1.lowLevel",
                        "signal1.highLevel",
                        "signal1.transition.rise",
                        "signal1.transition.fall",
                        "signal1.duty",
                        "signal1.duty.released",
                        "signal1.duty.pressed",
                        "signal1.events.stuck-low",
                        "signal1.events.stuck-high",
                        "signal1.events.dropout",
                        "signal1.events.missing-pulse",
                        "signal1.events.runt",
                        "signal1.events.bounce",
                        "signal1.events.extra-pulse",
                        "signal1.events.level-shift",
                        "signal2.signal",
                        "signal2.frequency",
                        "signal2.lowLevel",
                        "signal2.highLevel",
                        "signal2.transition.rise",
                        "signal2.transition.fall",
                        "signal2.duty",
                        "signal2.duty.released",
                        "signal2.duty.pressed",
                        "signal2.events.stuck-low",
                        "signal2.events.stuck-high",
                        "signal2.events.dropout",
                        "signal2.events.missing-pulse",
                        "signal2.events.runt",
                        "signal2.events.bounce",
                        "signal2.events.extra-pulse",
                        "signal2.events.level-shift",
                        "supply");
        assertThat(result.lines())
                .filteredOn(line -> line.result() != LineResult.PASS)
                .extracting(Line::item)
                .containsExactly(
                        "signal1.duty.released",
                        "signal1.duty.pressed",
                        "signal2.duty.released",
                        "signal2.duty.pressed");
        assertThat(result.lines())
                .filteredOn(line -> line.result() == LineResult.PASS)
                .allMatch(line -> line.reason().isEmpty());
    }

    @Test
    void aLineCarriesValueUncertaintyLimitsAndProbability() throws IOException {
        Line line = line(
                "signal1.frequency", signal1().carrier(220.5, 0, 2, t -> 10).frequencyU(0.5));

        assertThat(line.measured()).hasValue(220.5);
        assertThat(line.u()).hasValue(0.5);
        assertThat(line.unit()).isEqualTo("Hz");
        assertThat(line.lower()).hasValue(180);
        assertThat(line.upper()).hasValue(220);
        // Phi(-1), closed form.
        assertThat(line.conformityProbability().orElseThrow()).isCloseTo(0.158655, within(1e-6));
        assertThat(line.result()).isEqualTo(LineResult.INCONCLUSIVE);
        assertThat(line.reason()).contains("above the upper limit by 500.0 mHz").contains("guard band of 1.000 Hz");
    }

    @Test
    void aFrequencyOutsideTheGuardBandFails() throws IOException {
        assertThat(line(
                                "signal1.frequency",
                                signal1().carrier(221.1, 0, 2, t -> 10).frequencyU(0.5))
                        .result())
                .isEqualTo(LineResult.FAIL);
    }

    @Test
    void theWorstUndisturbedCycleDecidesTheDuty() throws IOException {
        MeasuredChannel one = signal1().carrier(200, 0, 2, t -> t > 1 && t < 1.005 ? 50 : 10);
        Line line = line("signal1.duty", one);

        // End points 10 and 45 % with 2 points of tolerance.
        assertThat(line.lower()).hasValue(8);
        assertThat(line.upper()).hasValue(47);
        assertThat(line.measured().orElseThrow()).isCloseTo(50, within(1e-9));
        assertThat(line.result()).isEqualTo(LineResult.FAIL);
        assertThat(line.reason()).contains("worst cycle starts at 1 s").contains("1 of 400 undisturbed cycles outside");
    }

    @Test
    void aDisturbedCycleDoesNotDecideTheDuty() throws IOException {
        MeasuredChannel one =
                signal1().carrier(200, 0, 2, t -> t > 1 && t < 1.005 ? 50 : 10).disturbed(1.001, 1.004);
        assertThat(line("signal1.duty", one).result()).isEqualTo(LineResult.PASS);
    }

    @Test
    void theValidBandNarrowsTheDuty() throws IOException {
        SensorChannel narrow =
                duty(new Sensor.Duty(10, 94, OptionalDouble.of(2), OptionalDouble.of(9), OptionalDouble.of(95)));
        Line line = line(Sensors.of(narrow), "signal1.duty", signal1().carrier(200, 0, 2, t -> 8.5));

        assertThat(line.lower()).hasValue(9);
        assertThat(line.upper()).hasValue(95);
        assertThat(line.result()).isEqualTo(LineResult.FAIL);
    }

    @Test
    void endPointsWithoutToleranceLimitNothing() throws IOException {
        SensorChannel open =
                duty(new Sensor.Duty(10, 45, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()));
        CheckResult result = Checks.check(
                Sensors.of(open),
                CheckSettings.none(),
                signal1().carrier(200, 0, 2, t -> 70).build());

        assertThat(Checks.lines(result)).doesNotContainKeys("signal1.duty", "signal1.duty.released");
        assertThat(result.absentLimits()).contains("signal1: no tolerance for the duty");
    }

    @Test
    void theScatterOfOneCycleWidensTheUncertaintyOfTheWorst() throws IOException {
        // Alternating by +-0.1 %: second differences are +-0.4 %, so their median gives 0.4 / 0.674490 / sqrt(6).
        int[] cycle = {0};
        MeasuredChannel one = signal1().dutyU(0).carrier(200, 0, 2, t -> 20 + (cycle[0]++ % 2 == 0 ? 0.1 : -0.1));
        assertThat(line("signal1.duty", one).u().orElseThrow()).isCloseTo(0.242112, within(1e-4));
    }

    @Test
    void steadyMovementAddsNothingToTheUncertaintyOfACycle() throws IOException {
        MeasuredChannel one = signal1().dutyU(0.01).carrier(200, 0, 2, t -> 10 + 15 * t);
        assertThat(line("signal1.duty", one).u().orElseThrow()).isCloseTo(0.01, within(1e-6));
    }

    @Test
    void anEndPointIsJudgedWhereThePositionIsKnown() throws IOException {
        Map<String, Line> released = Checks.lines(Checks.check(
                Sensors.twin(),
                Checks.at(Position.RELEASED),
                signal1().build(),
                signal2().build()));
        assertThat(released.get("signal1.duty.released").result()).isEqualTo(LineResult.PASS);
        assertThat(released.get("signal1.duty.pressed").result()).isEqualTo(LineResult.NOT_JUDGED);
        assertThat(released.get("signal1.duty.pressed").reason()).isEqualTo("the sensor was released");

        Map<String, Line> pressed = Checks.lines(Checks.check(
                Sensors.twin(),
                Checks.at(Position.PRESSED),
                signal1().build(),
                signal2().build()));
        assertThat(pressed.get("signal1.duty.pressed").result()).isEqualTo(LineResult.FAIL);
        assertThat(pressed.get("signal1.duty.pressed").lower()).hasValue(43);
    }

    @Test
    void anUnknownPositionIsSaidWithWhatToDo() throws IOException {
        assertThat(line("signal1.duty.released", signal1()).reason()).contains("--position");
    }

    private static MeasuredChannel signal1() {
        return MeasuredChannel.named("signal1");
    }

    private static MeasuredChannel signal2() {
        return MeasuredChannel.named("signal2").carrier(203, 0.001, 2, t -> 20);
    }

    private static SensorChannel duty(Sensor.Duty duty) {
        SensorChannel base = Sensors.signal1();
        return new SensorChannel(
                base.name(),
                true,
                base.frequency(),
                base.lowLevel(),
                base.highLevel(),
                base.input(),
                Optional.of(duty),
                base.transitionMaxSeconds());
    }

    private static Line line(String item, MeasuredChannel channel) throws IOException {
        return line(Sensors.of(Sensors.signal1()), item, channel);
    }

    private static Line line(Sensor sensor, String item, MeasuredChannel channel) throws IOException {
        return Checks.lines(Checks.check(sensor, CheckSettings.none(), channel.build()))
                .get(item);
    }
}
