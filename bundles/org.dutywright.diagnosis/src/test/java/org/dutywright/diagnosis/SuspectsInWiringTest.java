// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.dutywright.diagnosis.Pictures.assertTop;
import static org.dutywright.diagnosis.Pictures.check;
import static org.dutywright.diagnosis.Pictures.checkOver;
import static org.dutywright.diagnosis.Pictures.dropouts;
import static org.dutywright.diagnosis.Pictures.one;
import static org.dutywright.diagnosis.Pictures.spikes;
import static org.dutywright.diagnosis.Pictures.top;
import static org.dutywright.diagnosis.Pictures.two;
import static org.dutywright.diagnosis.Pictures.weight;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Status;
import org.junit.jupiter.api.Test;

/** The picture of each fault is common practice, no source; the numbers are made up. */
class SuspectsInWiringTest {
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
}
