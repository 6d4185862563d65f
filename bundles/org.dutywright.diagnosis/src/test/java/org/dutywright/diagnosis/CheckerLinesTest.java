// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Status;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.EventRule;
import org.dutywright.sensor.Sensor.SensorChannel;
import org.junit.jupiter.api.Test;

class CheckerLinesTest {
    private static final String CANNOT_TELL = "% of supply needs a supply channel or --supply VOLTS";

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

    @Test
    void aShareOfTheSupplyNeedsASupply() throws IOException {
        Line line = line(Sensors.of(shareOfSupply()), "signal1.highLevel", signal1());
        assertThat(line.result()).isEqualTo(LineResult.NOT_JUDGED);
        assertThat(line.reason()).isEqualTo(CANNOT_TELL);
        assertThat(line.lower()).isEmpty();
        assertThat(line.upper()).hasValue(16);
        assertThat(line.measured()).hasValue(12);
    }

    @Test
    void theOtherLimitStillFailsWithoutASupply() throws IOException {
        Line line =
                line(Sensors.of(shareOfSupply()), "signal1.highLevel", signal1().levels(0.4, 17));
        assertThat(line.result()).isEqualTo(LineResult.FAIL);
    }

    @Test
    void aShareOfTheSupplyIsTakenFromTheTypedVoltage() throws IOException {
        CheckResult result = Checks.check(
                Sensors.of(shareOfSupply()), Checks.supply(16.1), signal1().build());
        Line line = Checks.lines(result).get("signal1.highLevel");
        // 75 % of 16.1 V.
        assertThat(line.lower().orElseThrow()).isCloseTo(12.075, within(1e-12));
        assertThat(line.result()).isEqualTo(LineResult.FAIL);
        assertThat(line.reason()).contains("supply taken as 16.10 V as given by the user");
    }

    @Test
    void theRoleOfSupplyGoesBeforeANameAndBothBeforeTheTypedVoltage() throws IOException {
        ChannelMeasurement named = MeasuredChannel.level("battery", Role.LEVEL, 20, 0.01);
        ChannelMeasurement role = MeasuredChannel.level("ch3", Role.SUPPLY, 14, 0.01);

        assertThat(supplyLine(named, role).measured()).hasValue(14);
        assertThat(supplyLine(named).measured()).hasValue(20);
        assertThat(supplyLine(MeasuredChannel.level("Battery voltage", Role.LEVEL, 20, 0.01))
                        .measured())
                .hasValue(24);
    }

    @Test
    void theUncertaintyOfTheSupplyEntersALimitThatRestsOnIt() throws IOException {
        ChannelMeasurement supply = MeasuredChannel.level("supply", Role.SUPPLY, 12, 0.4);
        CheckResult result = Checks.check(
                Sensors.of(shareOfSupply()),
                CheckSettings.none(),
                signal1().levelU(0.4).build(),
                supply);
        // sqrt(0.4^2 + (0.75 x 0.4)^2), closed form.
        assertThat(Checks.lines(result).get("signal1.highLevel").u().orElseThrow())
                .isCloseTo(0.5, within(1e-12));
    }

    @Test
    void aSupplyOutsideItsLimitsFails() throws IOException {
        CheckResult result = Checks.check(
                Sensors.twin(), Checks.supply(8.5), signal1().build(), signal2().build());
        assertThat(Checks.lines(result).get("supply").result()).isEqualTo(LineResult.FAIL);
        assertThat(result.verdict()).isEqualTo(Verdict.DOES_NOT_CONFORM);
    }

    @Test
    void aChannelThatIsMissingIsInconclusiveAndNothingElseOfItIsJudged() throws IOException {
        CheckResult result =
                Checks.check(Sensors.twin(), CheckSettings.none(), signal1().build());
        Map<String, Line> lines = Checks.lines(result);

        assertThat(lines.get("signal2.signal").result()).isEqualTo(LineResult.INCONCLUSIVE);
        assertThat(lines.get("signal2.signal").reason())
                .contains("it has signal1")
                .contains("--channel COLUMN=signal2");
        assertThat(lines.get("signal2.duty").result()).isEqualTo(LineResult.NOT_JUDGED);
        assertThat(lines.get("signal2.events.runt").result()).isEqualTo(LineResult.NOT_JUDGED);
        assertThat(result.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(result.agreementAbsent()).contains("signal2 has no channel in the capture");
    }

    @Test
    void aStuckChannelFailsItsSignalAndItsEventsButNothingThatCannotBeMeasured() throws IOException {
        MeasuredChannel stuck = signal1()
                .status(Status.STUCK_HIGH, "no transition, 12 V throughout")
                .count(EventKind.STUCK_HIGH, 1);
        Map<String, Line> lines = Checks.lines(Checks.check(
                Sensors.twin(), CheckSettings.none(), stuck.build(), signal2().build()));

        assertThat(lines.get("signal1.signal").result()).isEqualTo(LineResult.FAIL);
        assertThat(lines.get("signal1.signal").reason()).contains("stuck-high").contains("12 V throughout");
        assertThat(lines.get("signal1.frequency").result()).isEqualTo(LineResult.NOT_JUDGED);
        assertThat(lines.get("signal1.frequency").reason()).contains("stuck-high");
        assertThat(lines.get("signal1.highLevel").result()).isEqualTo(LineResult.NOT_JUDGED);
        assertThat(lines.get("signal1.events.stuck-high").result()).isEqualTo(LineResult.FAIL);
        assertThat(lines.get("signal1.events.stuck-low").result()).isEqualTo(LineResult.PASS);
    }

    @Test
    void anUnreadableChannelBlamesTheRecordingAndNotTheSensor() throws IOException {
        CheckResult result = Checks.check(
                Sensors.of(Sensors.signal1()),
                CheckSettings.none(),
                signal1().status(Status.UNREADABLE, "2 samples a pulse").build());
        assertThat(Checks.lines(result).get("signal1.signal").result()).isEqualTo(LineResult.INCONCLUSIVE);
        assertThat(Checks.lines(result).get("signal1.signal").reason()).contains("2 samples a pulse");
    }

    @Test
    void aChannelGivenAnotherRoleIsInconclusive() throws IOException {
        Line line = line("signal1.signal", signal1().role(Role.LEVEL));
        assertThat(line.result()).isEqualTo(LineResult.INCONCLUSIVE);
        assertThat(line.reason()).contains("read as level");
    }

    @Test
    void levelsOfAChannelThatIsNotInVoltsAreNotJudged() throws IOException {
        Line line = line("signal1.highLevel", signal1().unit("A"));
        assertThat(line.result()).isEqualTo(LineResult.NOT_JUDGED);
        assertThat(line.reason()).isEqualTo("the channel is not in volts but in A");
    }

    @Test
    void anAbsentResultPassesOnItsReason() throws IOException {
        Line line = line(
                "signal1.transition.rise",
                signal1().result("transition.rise", new Outcome.Absent("no sample lies on an edge")));
        assertThat(line.result()).isEqualTo(LineResult.NOT_JUDGED);
        assertThat(line.reason()).isEqualTo("no sample lies on an edge");
    }

    @Test
    void aCountAboveWhatIsAllowedFails() throws IOException {
        Map<String, EventRule> rules = Map.of(
                "runt", new EventRule(OptionalLong.of(3)),
                "level-shift", new EventRule(OptionalLong.empty()),
                "duty-jump", new EventRule(OptionalLong.of(0)));
        MeasuredChannel one = signal1()
                .count(EventKind.RUNT, 3)
                .count(EventKind.LEVEL_SHIFT, 7)
                .count(EventKind.DUTY_JUMP, 1)
                .count(EventKind.BOUNCE, 1);
        Map<String, Line> lines = Checks.lines(Checks.check(
                Sensors.twin(rules),
                CheckSettings.none(),
                one.build(),
                signal2().build()));

        assertThat(lines.get("signal1.events.runt").result()).isEqualTo(LineResult.PASS);
        assertThat(lines.get("signal1.events.runt").upper()).hasValue(3);
        assertThat(lines.get("signal1.events.bounce").result()).isEqualTo(LineResult.FAIL);
        assertThat(lines.get("signal1.events.bounce").measured()).hasValue(1);
        assertThat(lines.get("signal1.events.bounce").reason()).isEqualTo("1 counted, 0 allowed");
        assertThat(lines.get("signal1.events.level-shift").result()).isEqualTo(LineResult.NOT_JUDGED);
        assertThat(lines.get("signal1.events.level-shift").measured()).hasValue(7);
        assertThat(lines.get("signal1.events.duty-jump").result()).isEqualTo(LineResult.FAIL);
        assertThat(lines).doesNotContainKey("signal1.events.period-excursion");
    }

    @Test
    void aPoorRecordingMakesWhatRestsOnItInconclusiveEvenIfItWouldFail() throws IOException {
        Fitness poor = new Fitness("signal1.samplesPerPulse", Fitness.Grade.POOR, "12 samples a pulse; use 100 kHz");
        Map<String, Line> lines = Checks.lines(Checks.check(
                Sensors.twin(),
                CheckSettings.none(),
                Checks.measurement(
                        List.of(poor),
                        signal1().carrier(300, 0, 2, t -> 10).build(),
                        signal2().build())));

        assertThat(lines.get("signal1.frequency").result()).isEqualTo(LineResult.INCONCLUSIVE);
        assertThat(lines.get("signal1.frequency").measured()).hasValue(300);
        assertThat(lines.get("signal1.frequency").reason()).contains("12 samples a pulse; use 100 kHz");
        assertThat(lines.get("signal2.frequency").result()).isEqualTo(LineResult.PASS);
    }

    @Test
    void anUnfitRecordingGivesNoNumber() throws IOException {
        Fitness unfit = new Fitness("clipping", Fitness.Grade.UNFIT, "both states lie on the range's end");
        Map<String, Line> lines = Checks.lines(Checks.check(
                Sensors.twin(),
                CheckSettings.none(),
                Checks.measurement(List.of(unfit), signal1().build(), signal2().build())));

        assertThat(lines.get("signal1.highLevel").result()).isEqualTo(LineResult.NOT_JUDGED);
        assertThat(lines.get("signal1.highLevel").measured()).isEmpty();
        assertThat(lines.get("signal1.highLevel").reason()).contains("both states lie on the range's end");
        assertThat(lines.get("signal1.frequency").result()).isEqualTo(LineResult.PASS);
        assertThat(lines.get("signal1.signal").result()).isEqualTo(LineResult.INCONCLUSIVE);
    }

    @Test
    void aRecordingThatCanCarryNothingIsInconclusive() throws IOException {
        Fitness unfit = new Fitness("signal1.samplesPerPulse", Fitness.Grade.UNFIT, "1 sample a pulse");
        Fitness other = new Fitness("signal2.samplesPerPulse", Fitness.Grade.UNFIT, "1 sample a pulse");
        CheckResult result = Checks.check(
                Sensors.twin(),
                CheckSettings.none(),
                Checks.measurement(
                        List.of(unfit, other), signal1().build(), signal2().build()));
        assertThat(result.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(result.lines()).noneMatch(it -> it.result() == LineResult.PASS);
    }

    @Test
    void whatAGapHidesIsInconclusiveButWhatWasCountedStands() throws IOException {
        Fitness gaps = new Fitness("capture.gaps", Fitness.Grade.POOR, "3 gaps, 5 s in all");
        Map<String, Line> lines = Checks.lines(Checks.check(
                Sensors.twin(),
                CheckSettings.none(),
                Checks.measurement(
                        List.of(gaps),
                        signal1().count(EventKind.RUNT, 2).build(),
                        signal2().build())));
        assertThat(lines.get("signal1.events.runt").result()).isEqualTo(LineResult.FAIL);
        assertThat(lines.get("signal1.events.bounce").result()).isEqualTo(LineResult.INCONCLUSIVE);
        assertThat(lines.get("signal1.frequency").result()).isEqualTo(LineResult.PASS);
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

    private static SensorChannel shareOfSupply() {
        SensorChannel base = Sensors.signal1();
        return new SensorChannel(
                base.name(),
                true,
                base.frequency(),
                base.lowLevel(),
                Optional.of(Sensors.supplyShare(75, 16)),
                base.input(),
                base.duty(),
                base.transitionMaxSeconds());
    }

    private static Line line(String item, MeasuredChannel channel) throws IOException {
        return line(Sensors.of(Sensors.signal1()), item, channel);
    }

    private static Line line(Sensor sensor, String item, MeasuredChannel channel) throws IOException {
        return Checks.lines(Checks.check(sensor, CheckSettings.none(), channel.build()))
                .get(item);
    }

    private static Line supplyLine(ChannelMeasurement... more) throws IOException {
        ChannelMeasurement[] channels = new ChannelMeasurement[more.length + 1];
        channels[0] = signal1().build();
        System.arraycopy(more, 0, channels, 1, more.length);
        return Checks.lines(Checks.check(Sensors.of(Sensors.signal1()), Checks.supply(24), channels))
                .get("supply");
    }
}
