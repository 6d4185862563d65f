// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Status;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.EventRule;
import org.junit.jupiter.api.Test;

class CheckerAbsenceTest {
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

    private static Line line(String item, MeasuredChannel channel) throws IOException {
        return line(Sensors.of(Sensors.signal1()), item, channel);
    }

    private static Line line(Sensor sensor, String item, MeasuredChannel channel) throws IOException {
        return Checks.lines(Checks.check(sensor, CheckSettings.none(), channel.build()))
                .get(item);
    }
}
