// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.DoubleUnaryOperator;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Status;
import org.dutywright.sensor.Sensor;
import org.junit.jupiter.api.Test;

/** The picture of each fault is common practice, no source; the numbers are made up. */
class SuspectsTest {
    @Test
    void nothingIsSuspectedWhereEverythingConforms() throws IOException {
        CheckResult result = check(one(t -> 30), two(t -> 30));
        assertThat(result.suspects()).hasSize(1);
        assertTop(result, Place.NONE, null);
        assertThat(result.suspects().get(0).weight()).isEqualTo(1);
    }

    @Test
    void aMissingChannelPointsToTheRecording() throws IOException {
        CheckResult result = check(one(t -> 30));
        assertTop(result, Place.RECORDING, null);
        assertThat(result.suspects().get(0).reasonsFor().get(0)).contains("signal2");
        assertThat(result.nextMeasurement()).contains("record all channels of the sensor");
    }

    @Test
    void pulsesThatComeBackInStepPointToTheWire() throws IOException {
        CheckResult result = checkOver(
                Checks.measurement(
                        List.of(),
                        dropouts(one(t -> 30), 0).build(),
                        two(t -> 30).build()),
                12,
                0.4);
        assertTop(result, Place.SIGNAL_WIRE, Kind.INTERMITTENT, "signal1");
        assertThat(top(result).weight()).isGreaterThan(0.7);
        assertThat(top(result).reasonsFor())
                .anyMatch(it -> it.contains("in step across 2 of 2"))
                .anyMatch(it -> it.contains("high meanwhile"));
        assertThat(result.nextMeasurement()).contains("sensor's connector").contains("maker's procedure");
    }

    @Test
    void pulsesThatComeBackInStepFromALowLineLeaveMoreRoomForTheSensor() throws IOException {
        CheckResult result = checkOver(
                Checks.measurement(
                        List.of(),
                        dropouts(one(t -> 30), 0).build(),
                        two(t -> 30).build()),
                0.4,
                0.4);
        assertTop(result, Place.SIGNAL_WIRE, Kind.INTERMITTENT, "signal1");
        assertThat(weight(result, Place.SENSOR)).isGreaterThan(0.15);
    }

    @Test
    void oneChannelThatStartsAnewPointsToTheSensor() throws IOException {
        CheckResult result = check(dropouts(one(t -> 30), 0.0021), two(t -> 30));
        assertTop(result, Place.SENSOR, Kind.RESET, "signal1");
        assertThat(top(result).reasonsFor()).anyMatch(it -> it.contains("out of step across 2 of 2"));
    }

    @Test
    void allChannelsThatStartAnewPointToSupplyAndGround() throws IOException {
        CheckResult result = checkOver(
                Checks.measurement(
                        List.of(),
                        dropouts(one(t -> 30), 0.0021).build(),
                        dropouts(two(t -> 30), 0.0013).build()),
                12,
                12);
        assertTop(result, Place.SUPPLY, Kind.INTERMITTENT, "signal1", "signal2");
        assertThat(weight(result, Place.SUPPLY) + weight(result, Place.GROUND)).isGreaterThan(0.8);
        assertThat(weight(result, Place.GROUND)).isGreaterThan(0.3);
        assertThat(result.nextMeasurement()).contains("supply and ground pins");
    }

    @Test
    void linesThatDieLowTogetherPointToTheSupply() throws IOException {
        CheckResult result = checkOver(
                Checks.measurement(
                        List.of(),
                        dropouts(one(t -> 30), 0.0021).build(),
                        dropouts(two(t -> 30), 0.0013).build()),
                0.1,
                0.1);
        assertTop(result, Place.SUPPLY, Kind.INTERMITTENT, "signal1", "signal2");
        assertThat(weight(result, Place.SUPPLY)).isGreaterThan(3 * weight(result, Place.GROUND));
    }

    @Test
    void aRecordedSupplyThatStaysPointsToTheGround() throws IOException {
        ChannelMeasurement supply = MeasuredChannel.level("supply", Role.SUPPLY, 12.3, 0.01);
        CheckResult steady = checkOver(
                Checks.measurement(
                        List.of(),
                        dropouts(one(t -> 30), 0.0021).build(),
                        dropouts(two(t -> 30), 0.0013).build(),
                        supply),
                12,
                12,
                12.3);
        assertTop(steady, Place.GROUND, Kind.INTERMITTENT, "signal1", "signal2");

        CheckResult dipped = checkOver(steady.measurement(), 12, 12, 3);
        assertTop(dipped, Place.SUPPLY, Kind.INTERMITTENT, "signal1", "signal2");
        assertThat(top(dipped).reasonsFor()).anyMatch(it -> it.contains("below 90 % of its mean in 4 of 4"));
    }

    @Test
    void aStuckLevelAtOneEndIsSpreadOverThePlacesThatLookTheSame() throws IOException {
        CheckResult result = check(
                one(t -> 30)
                        .levels(12, 12)
                        .status(Status.STUCK_HIGH, "no transition")
                        .count(EventKind.STUCK_HIGH, 1),
                two(t -> 30));
        assertThat(result.suspects()).allMatch(it -> it.weight() < 0.5);
        assertThat(result.suspects())
                .extracting(Suspect::place)
                .contains(Place.SENSOR, Place.SIGNAL_WIRE, Place.MODULE_INPUT);
        assertThat(top(result).reasonsAgainst()).anyMatch(it -> it.contains("recorded at one end only"));
        assertThat(top(result).reasonsFor()).anyMatch(it -> it.contains("signal1 stands high at 12.00 V"));
        assertThat(result.nextMeasurement()).contains("sensor's connector").contains("unplugged");
    }

    @Test
    void aStuckLevelAboveTheOtherChannelsHighLevelPointsToAShort() throws IOException {
        CheckResult result =
                check(one(t -> 30).levels(24, 24).status(Status.STUCK_HIGH, "no transition"), two(t -> 30));
        assertTop(result, Place.SIGNAL_WIRE, Kind.SHORT_TO_SUPPLY, "signal1");
    }

    @Test
    void aLowStuckLevelNamesShortSensorAndMissingPullUp() throws IOException {
        CheckResult result = check(one(t -> 30).status(Status.STUCK_LOW, "no transition"), two(t -> 30));
        assertThat(result.suspects())
                .extracting(Suspect::kind)
                .contains(Optional.of(Kind.SHORT_TO_GROUND), Optional.of(Kind.WEAK_PULL_UP));
        assertThat(result.suspects()).allMatch(it -> it.weight() < 0.5);
    }

    @Test
    void allChannelsDeadTogetherPointToTheSupply() throws IOException {
        CheckResult low = check(
                one(t -> 30).status(Status.STUCK_LOW, "no transition"),
                two(t -> 30).status(Status.STUCK_LOW, "no transition"));
        assertTop(low, Place.SUPPLY, Kind.OPEN, "signal1", "signal2");
        assertThat(weight(low, Place.RECORDING)).isGreaterThan(0.1);

        CheckResult high = check(
                one(t -> 30).status(Status.STUCK_HIGH, "no transition"),
                two(t -> 30).status(Status.STUCK_HIGH, "no transition"));
        assertThat(weight(high, Place.SUPPLY))
                .isEqualTo(weight(high, Place.GROUND))
                .isGreaterThan(0.3);
    }

    @Test
    void bothLowLevelsLiftedPointToTheGroundAndOneToItsWire() throws IOException {
        assertTop(
                check(one(t -> 30).levels(1.7, 12), two(t -> 30).levels(1.65, 12)),
                Place.GROUND,
                Kind.HIGH_RESISTANCE,
                "signal1",
                "signal2");
        CheckResult single = check(one(t -> 30).levels(1.7, 12), two(t -> 30));
        assertTop(single, Place.SIGNAL_WIRE, Kind.HIGH_RESISTANCE, "signal1");
        assertThat(top(single).reasonsFor()).anyMatch(it -> it.contains("1.700 V on signal1, 400.0 mV on signal2"));
    }

    @Test
    void aLowHighLevelWithASlowRisePointsToThePullUp() throws IOException {
        assertTop(
                check(one(t -> 30).levels(0.4, 8).transitions(400e-6, 20e-6), two(t -> 30)),
                Place.MODULE_INPUT,
                Kind.WEAK_PULL_UP,
                "signal1");
        assertTop(
                check(one(t -> 30).transitions(400e-6, 20e-6), two(t -> 30)),
                Place.MODULE_INPUT,
                Kind.WEAK_PULL_UP,
                "signal1");
        assertTop(
                check(one(t -> 30).transitions(20e-6, 400e-6), two(t -> 30)),
                Place.SIGNAL_WIRE,
                Kind.HIGH_RESISTANCE,
                "signal1");
        assertTop(check(one(t -> 30).levels(0.4, 8), two(t -> 30).levels(0.4, 8)), Place.SUPPLY, Kind.HIGH_RESISTANCE);
    }

    @Test
    void aWrongCarrierWithPerfectLevelsIsTheSensors() throws IOException {
        assertTop(
                check(MeasuredChannel.named("signal1").carrier(231.5, 0, 2, t -> 20.5), two(t -> 30)),
                Place.SENSOR,
                Kind.FREQUENCY,
                "signal1");
        CheckResult all = check(
                MeasuredChannel.named("signal1").carrier(400, 0, 2, t -> 20.5),
                MeasuredChannel.named("signal2").carrier(402, 0, 2, t -> 41));
        assertThat(weight(all, Place.RECORDING)).isGreaterThan(0.2);
    }

    @Test
    void aConstantDifferenceWithPerfectLevelsIsTheSensors() throws IOException {
        CheckResult result = check(one(t -> 20 + sweep(t) / 2), two(t -> 28 + sweep(t) / 2));
        assertTop(result, Place.SENSOR, Kind.DRIFT, "signal1", "signal2");
        assertThat(top(result).reasonsFor())
                .anyMatch(it -> it.contains("signal1 reads 8.0 % of travel less than signal2"))
                .anyMatch(it -> it.contains("an offset"));
        assertThat(top(result).reasonsAgainst()).anyMatch(it -> it.contains("does not tell which"));
    }

    @Test
    void theChannelOffItsEndPointsIsTheOneBlamed() throws IOException {
        CheckResult result = check(one(SuspectsTest::sweep), two(t -> 12 + sweep(t)));
        assertTop(result, Place.SENSOR, Kind.DRIFT, "signal2");
    }

    @Test
    void aDifferenceThatGrowsWithTheTravelIsAGain() throws IOException {
        CheckResult result = check(one(t -> 0.8 * sweep(t)), two(SuspectsTest::sweep));
        assertThat(top(result).reasonsFor()).anyMatch(it -> it.contains("a wrong gain"));
    }

    @Test
    void aDutyThatStandsStillWhileTheOtherMovesIsSaid() throws IOException {
        CheckResult result = check(one(t -> 30), two(SuspectsTest::sweep));
        assertTop(result, Place.SENSOR, Kind.DRIFT, "signal1", "signal2");
        assertThat(top(result).reasonsFor())
                .anyMatch(it -> it.contains("The duty of signal1 stands still while signal2 moves"));
    }

    @Test
    void bothOffTogetherPointToTheLinkage() throws IOException {
        CheckResult result = check(one(t -> -12), two(t -> -12));
        assertTop(result, Place.LINKAGE, Kind.DRIFT, "signal1", "signal2");
    }

    @Test
    void aDifferenceAtOnePlaceOfTheTravelIsAWornSpot() throws IOException {
        DoubleUnaryOperator worn = t -> {
            double travel = sweep(t);
            return Math.abs(travel - 40) < 4 ? travel + 20 : travel;
        };
        MeasuredChannel one = one(worn).count(EventKind.DUTY_JUMP, 8);
        // Slow enough for the fault to be confirmed: the text allows no duty jump.
        CheckResult result = Checks.check(
                Sensors.twin(Map.of("duty-jump", new Sensor.EventRule(OptionalLong.of(0)))),
                CheckSettings.none(),
                one.build(),
                two(SuspectsTest::sweep).build());
        assertTop(result, Place.SENSOR, Kind.WORN_SPOT, "signal1");
        assertThat(top(result).reasonsFor())
                .anyMatch(it -> it.contains("Between 36 and 44 % of travel") && it.contains("on 4 passes"));
    }

    @Test
    void exchangedLeadsAreFoundBeforeAnySensorIsBlamed() throws IOException {
        // signal1's column holds signal2 (low counted) and the other way round, so each is counted on the wrong state.
        MeasuredChannel column1 =
                MeasuredChannel.named("signal1").carrier(203, 0.001, 2, t -> 100 - (20 + 0.7 * sweep(t)));
        MeasuredChannel column2 =
                MeasuredChannel.named("signal2").carrier(200, 0, 2, t -> 100 - (10 + 0.35 * sweep(t)));
        CheckResult result = check(column1, column2);
        assertTop(result, Place.RECORDING, Kind.SWAPPED_LEADS, "signal1", "signal2");
        assertThat(top(result).weight()).isGreaterThan(0.7);
        assertThat(result.suspects()).noneMatch(it -> it.kind().equals(Optional.of(Kind.DRIFT)));
        assertThat(result.nextMeasurement()).contains("wiring diagram");
    }

    @Test
    void aChannelCountedOnItsOtherStateIsFound() throws IOException {
        MeasuredChannel inverted = MeasuredChannel.named("signal1").carrier(200, 0, 2, t -> 90 - 0.35 * sweep(t));
        CheckResult result = check(inverted, two(SuspectsTest::sweep));
        assertTop(result, Place.RECORDING, Kind.SWAPPED_LEADS, "signal1");
        assertThat(top(result).reasonsFor().get(0)).contains("Counted on its low state");
    }

    @Test
    void wiresThatTouchShowOnePattern() throws IOException {
        MeasuredChannel one = MeasuredChannel.named("signal1").carrier(200, 0, 2, t -> 20);
        MeasuredChannel two = MeasuredChannel.named("signal2").carrier(200, 0.001, 2, t -> 80);
        assertTop(check(one, two), Place.SIGNAL_WIRE, Kind.SHORT_BETWEEN_CHANNELS, "signal1", "signal2");
    }

    @Test
    void spikesAtTheSameInstantsPointToInterference() throws IOException {
        CheckResult result = check(
                spikes(one(t -> 30), EventKind.EXTRA_PULSE, 0.3, 0.9, 1.4),
                spikes(two(t -> 30), EventKind.EXTRA_PULSE, 0.30002, 0.90002, 1.40002));
        assertTop(result, Place.INTERFERENCE, null, "signal1", "signal2");
    }

    @Test
    void burstsOfBouncesAndRuntsOnOneChannelPointToItsWire() throws IOException {
        MeasuredChannel one = spikes(one(t -> 30), EventKind.BOUNCE, 0.3, 0.305, 0.31);
        CheckResult result = check(spikes(one, EventKind.RUNT, 0.315), two(t -> 30));
        assertTop(result, Place.SIGNAL_WIRE, Kind.INTERMITTENT, "signal1");
        assertThat(top(result).reasonsFor())
                .anyMatch(it -> it.contains("Up to 4 events of signal1 come within 50.00 ms"));
    }

    @Test
    void aPoorRecordingIsSuspectedWhereNothingElseFails() throws IOException {
        Fitness poor = new Fitness("signal1.samplesPerPulse", Fitness.Grade.POOR, "7 samples a pulse");
        CheckResult result = Checks.check(
                Sensors.twin(),
                CheckSettings.none(),
                Checks.measurement(
                        List.of(poor), one(t -> 30).build(), two(t -> 30).build()));
        assertThat(result.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
        assertTop(result, Place.RECORDING, null);
        assertThat(top(result).reasonsFor()).contains("7 samples a pulse.");
    }

    @Test
    void aValueOnItsLimitLeavesTheRecordingOrNothing() throws IOException {
        CheckResult result = check(
                MeasuredChannel.named("signal1").carrier(220, 0, 2, t -> 20.5).frequencyU(0.1), two(t -> 30));
        assertThat(result.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(result.suspects()).extracting(Suspect::place).containsExactly(Place.RECORDING, Place.NONE);
        assertThat(result.nextMeasurement()).contains("less uncertainty");
    }

    @Test
    void whatNoRuleKnowsIsSpreadEvenly() throws IOException {
        CheckResult result =
                check(one(t -> 30).count(EventKind.PERIOD_EXCURSION, 4).count(EventKind.RUNT, 3), two(t -> 30));
        // Counted but not listed: no place to look at.
        assertThat(result.suspects()).extracting(Suspect::weight).containsOnly(0.25);
        assertThat(top(result).reasonsFor()).contains("signal1.events.runt: 3 counted, 0 allowed.");
    }

    private static void assertTop(CheckResult result, Place place, Kind kind, String... channels) {
        assertSound(result);
        Suspect top = top(result);
        assertThat(top.place()).as("%s", result.suspects()).isEqualTo(place);
        assertThat(top.kind()).as("%s", result.suspects()).isEqualTo(Optional.ofNullable(kind));
        if (channels.length > 0) {
            assertThat(top.channels()).containsExactly(channels);
        }
    }

    /** What holds for every ranking. */
    private static void assertSound(CheckResult result) {
        assertThat(result.suspects().stream().mapToDouble(Suspect::weight).sum())
                .isCloseTo(1, within(1e-12));
        assertThat(result.suspects())
                .isSortedAccordingTo((a, b) -> Double.compare(b.weight(), a.weight()))
                .allSatisfy(it -> {
                    assertThat(it.reasonsFor()).isNotEmpty();
                    assertThat(it.reasonsFor()).allMatch(reason -> reason.endsWith("."));
                    assertThat(it.reasonsAgainst()).allMatch(reason -> reason.endsWith("."));
                    assertThat(String.join(" ", it.reasonsFor()))
                            .doesNotContain("NaN")
                            .doesNotContain("Infinity");
                });
        assertThat(result.nextMeasurement()).endsWith(".");
    }

    private static Suspect top(CheckResult result) {
        return result.suspects().get(0);
    }

    private static double weight(CheckResult result, Place place) {
        return result.suspects().stream()
                .filter(it -> it.place() == place)
                .mapToDouble(Suspect::weight)
                .sum();
    }

    private static CheckResult check(MeasuredChannel... channels) throws IOException {
        ChannelMeasurement[] built = new ChannelMeasurement[channels.length];
        for (int i = 0; i < channels.length; i++) {
            built[i] = channels[i].build();
        }
        CheckResult result = Checks.check(Sensors.twin(), CheckSettings.none(), built);
        assertSound(result);
        return result;
    }

    private static CheckResult checkOver(CaptureMeasurement measurement, double... volts) throws IOException {
        return Checks.check(Sensors.twin(), CheckSettings.none(), Checks.over(measurement, volts));
    }

    /** Two dropouts, after which the carrier comes later by so much. */
    private static MeasuredChannel dropouts(MeasuredChannel channel, double laterSeconds) {
        return channel.without(0.601, 0.642)
                .shifted(0.62, laterSeconds)
                .event(EventKind.DROPOUT, 0.601, 0.645)
                .without(1.301, 1.342)
                .shifted(1.32, laterSeconds)
                .event(EventKind.DROPOUT, 1.301, 1.345);
    }

    private static MeasuredChannel spikes(MeasuredChannel channel, EventKind kind, double... seconds) {
        for (double instant : seconds) {
            channel.event(kind, instant, instant + 50e-6);
        }
        return channel;
    }

    /** Released, pressed and back once a second. */
    private static double sweep(double seconds) {
        return 50 - 50 * Math.cos(2 * Math.PI * seconds);
    }

    private static MeasuredChannel one(DoubleUnaryOperator travelPercent) {
        return MeasuredChannel.named("signal1").carrier(200, 0, 2, t -> 10 + 0.35 * travelPercent.applyAsDouble(t));
    }

    private static MeasuredChannel two(DoubleUnaryOperator travelPercent) {
        return MeasuredChannel.named("signal2").carrier(203, 0.0013, 2, t -> 20 + 0.7 * travelPercent.applyAsDouble(t));
    }
}
