// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.DoubleUnaryOperator;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.sensor.Sensor.EventRule;
import org.junit.jupiter.api.Test;

/**
 * From samples to suspects. The wires are modelled by the test; what each fault looks like is common practice, no
 * source.
 */
class EndToEndTest {
    @Test
    void aHealthyPairSweptAndAtRestConforms() throws IOException {
        CheckResult result =
                bench(one(EndToEndTest::sweep), two(EndToEndTest::sweep)).check();
        assertThat(result.lines())
                .filteredOn(it -> it.result() == LineResult.FAIL)
                .isEmpty();
        assertThat(result.verdict()).as("%s", result.lines()).isEqualTo(Verdict.CONFORMS);
        assertThat(result.agreement().orElseThrow().maxDifferencePercent()).isLessThan(1);
        top(result, Place.NONE, null);
    }

    @Test
    void fastStrokesConform() throws IOException {
        DoubleUnaryOperator strokes = t -> Math.clamp(1250 * Math.min(t % 0.5 - 0.1, 0.35 - t % 0.5), 0, 100);
        CheckResult result = bench(one(strokes), two(strokes)).check();
        assertThat(result.verdict()).as("%s", result.lines()).isEqualTo(Verdict.CONFORMS);
    }

    @Test
    void aPathThatOpensWhileTheCarrierRunsOnIsTheWire() throws IOException {
        Wire open = two(EndToEndTest::sweep)
                .held(0.6031, 0.6472, 12.1)
                .held(1.2512, 1.2829, 12.1)
                .held(1.3021, 1.3894, 12.1);
        CheckResult result = bench(one(EndToEndTest::sweep), open).check();
        assertFails(result, "signal2.events.dropout");
        top(result, Place.SIGNAL_WIRE, Kind.INTERMITTENT, "signal2");
    }

    @Test
    void aPathThatOpensToGroundIsTheWireToo() throws IOException {
        Wire open = one(EndToEndTest::sweep).held(0.6031, 0.6472, 0.1).held(1.2512, 1.2829, 0.1);
        CheckResult result = bench(open, two(EndToEndTest::sweep)).check();
        top(result, Place.SIGNAL_WIRE, Kind.INTERMITTENT, "signal1");
    }

    @Test
    void aSensorThatStartsAnewOnBothChannelsLostSupplyOrGround() throws IOException {
        CheckResult result = bench(
                        one(EndToEndTest::sweep).stops(0.6031, 0.6583).stops(1.4172, 1.4716),
                        two(EndToEndTest::sweep).stops(0.6031, 0.6583).stops(1.4172, 1.4716))
                .check();
        assertFails(result, "signal1.events.dropout", "signal2.events.dropout");
        assertThat(result.suspects().get(0).place()).as("%s", result.suspects()).isIn(Place.SUPPLY, Place.GROUND);
        assertThat(result.suspects().get(1).place()).isIn(Place.SUPPLY, Place.GROUND);
    }

    @Test
    void theRecordedSupplyDecidesBetweenSupplyAndGround() throws IOException {
        Wire one = one(EndToEndTest::sweep).stops(0.6031, 0.6583).stops(1.4172, 1.4716);
        Wire two = two(EndToEndTest::sweep).stops(0.6031, 0.6583).stops(1.4172, 1.4716);
        DoubleUnaryOperator dips = t -> (t > 0.6031 && t < 0.65) || (t > 1.4172 && t < 1.46) ? 0.2 : 12.3;
        top(
                bench(one, two).wire("supply", Wire.steady(dips)).check(),
                Place.SUPPLY,
                Kind.INTERMITTENT,
                "signal1",
                "signal2");
        top(
                bench(one, two).wire("supply", Wire.steady(t -> 12.3)).check(),
                Place.GROUND,
                Kind.INTERMITTENT,
                "signal1",
                "signal2");
    }

    @Test
    void oneChannelThatStartsAnewIsTheSensor() throws IOException {
        Wire one = one(EndToEndTest::sweep).stops(0.6031, 0.6583).stops(1.4172, 1.4716);
        top(bench(one, two(EndToEndTest::sweep)).check(), Place.SENSOR, Kind.RESET, "signal1");
    }

    @Test
    void aChannelThatStopsHighIsSpreadOverThePlaces() throws IOException {
        CheckResult result = bench(one(EndToEndTest::sweep).held(1.2, 9, 12), two(EndToEndTest::sweep))
                .check();
        assertFails(result, "signal1.events.stuck-high");
        assertThat(result.suspects()).allMatch(it -> it.weight() < 0.5);
        assertThat(result.suspects())
                .extracting(Suspect::place)
                .contains(Place.SENSOR, Place.SIGNAL_WIRE, Place.MODULE_INPUT);
    }

    @Test
    void aChannelThatIsLowThroughoutIsSpreadOverThePlaces() throws IOException {
        CheckResult result =
                bench(Wire.steady(t -> 0.05), two(EndToEndTest::sweep)).check();
        assertFails(result, "signal1.signal");
        assertThat(result.suspects()).allMatch(it -> it.weight() < 0.5);
        assertThat(result.suspects().get(0).channels()).containsExactly("signal1");
    }

    @Test
    void bothLowLevelsLiftedThroughoutAreTheGround() throws IOException {
        CheckResult result = bench(
                        one(EndToEndTest::sweep).low(t -> 1.7),
                        two(EndToEndTest::sweep).low(t -> 1.7))
                .check();
        top(result, Place.GROUND, Kind.HIGH_RESISTANCE, "signal1", "signal2");
    }

    @Test
    void bothLowLevelsLiftedForAWhileAreTheGround() throws IOException {
        DoubleUnaryOperator lifted = t -> t > 0.8 && t < 1.5 ? 1.9 : 0.4;
        CheckResult result = bench(
                        one(EndToEndTest::sweep).low(lifted),
                        two(EndToEndTest::sweep).low(lifted))
                .check();
        assertFails(result, "signal1.events.level-shift", "signal2.events.level-shift");
        top(result, Place.GROUND, Kind.HIGH_RESISTANCE, "signal1", "signal2");
    }

    @Test
    void oneLowLevelLiftedIsItsWire() throws IOException {
        CheckResult result = bench(one(EndToEndTest::sweep).low(t -> 2.2), two(EndToEndTest::sweep))
                .check();
        top(result, Place.SIGNAL_WIRE, Kind.HIGH_RESISTANCE, "signal1");
    }

    @Test
    void slowRisingEdgesAreThePullUp() throws IOException {
        CheckResult result = bench(one(EndToEndTest::sweep).edges(90e-6, 6e-6), two(EndToEndTest::sweep))
                .check();
        assertFails(result, "signal1.transition.rise");
        top(result, Place.MODULE_INPUT, Kind.WEAK_PULL_UP, "signal1");
    }

    @Test
    void aFastCarrierIsTheSensor() throws IOException {
        Wire fast = Wire.activeHigh(231.5, 0.0011, t -> 10 + 0.35 * sweep(t));
        CheckResult result = bench(fast, two(EndToEndTest::sweep)).check();
        assertFails(result, "signal1.frequency");
        top(result, Place.SENSOR, Kind.FREQUENCY, "signal1");
    }

    @Test
    void channelsApartAreTheSensor() throws IOException {
        CheckResult result = bench(one(t -> 10 + 0.8 * sweep(t)), two(t -> 22 + 0.8 * sweep(t)))
                .check();
        assertThat(result.agreement().orElseThrow().wouldFlag()).isTrue();
        top(result, Place.SENSOR, Kind.DRIFT, "signal1", "signal2");
    }

    @Test
    void channelsThatComeApartWhileAtRestAreNoWornSpot() throws IOException {
        // Half a second in agreement, then apart: the place of rest differs from all others, but once only.
        DoubleUnaryOperator travel = t -> 20 + 25 * Math.max(0, t - 1);
        CheckResult result = bench(one(travel), two(t -> travel.applyAsDouble(t) - (t > 0.5 ? 7 : 0)))
                .check();
        top(result, Place.SENSOR, Kind.DRIFT);
        assertThat(result.suspects()).noneMatch(it -> it.kind().equals(Optional.of(Kind.WORN_SPOT)));
    }

    @Test
    void aBurstOfInterruptionsIsToldByItsPhaseToo() throws IOException {
        // Between the interruptions only three cycles are whole: their period comes from the longer side.
        Wire open = two(EndToEndTest::sweep)
                .held(0.6031, 0.6272, 12.1)
                .held(0.6533, 0.6812, 12.1)
                .held(0.7091, 0.7294, 12.1);
        CheckResult result = bench(one(EndToEndTest::sweep), open).check();
        top(result, Place.SIGNAL_WIRE, Kind.INTERMITTENT, "signal2");
        assertThat(result.suspects().get(0).reasonsFor()).anyMatch(it -> it.contains("in step across 2 of 2"));
    }

    @Test
    void aDutyThatStandsStillIsTheSensor() throws IOException {
        CheckResult result = bench(one(t -> 30), two(EndToEndTest::sweep)).check();
        top(result, Place.SENSOR, Kind.DRIFT);
        assertThat(result.suspects().get(0).reasonsFor())
                .anyMatch(it -> it.contains("The duty of signal1 stands still"));
    }

    @Test
    void aPedalThatDoesNotComeBackIsTheLinkage() throws IOException {
        CheckResult result = bench(one(t -> 9), two(t -> 9))
                .with(Checks.at(Position.RELEASED))
                .check();
        assertFails(result, "signal1.duty.released", "signal2.duty.released");
        top(result, Place.LINKAGE, Kind.DRIFT, "signal1", "signal2");
    }

    @Test
    void aJumpAtOnePlaceOfTheTravelIsAWornSpot() throws IOException {
        DoubleUnaryOperator worn = t -> Math.abs(sweep(t) - 40) < 4 ? sweep(t) + 24 : sweep(t);
        CheckResult result = bench(one(worn), two(EndToEndTest::sweep))
                .against(Sensors.twin(Map.of("duty-jump", new EventRule(OptionalLong.of(0)))))
                .check();
        assertFails(result, "signal1.events.duty-jump");
        top(result, Place.SENSOR, Kind.WORN_SPOT, "signal1");
    }

    @Test
    void exchangedLeadsAreTheRecording() throws IOException {
        CheckResult result = Bench.seconds(2)
                .wire("signal1", two(EndToEndTest::sweep))
                .wire("signal2", one(EndToEndTest::sweep))
                .check();
        top(result, Place.RECORDING, Kind.SWAPPED_LEADS, "signal1", "signal2");
    }

    @Test
    void wiresThatTouchAreFoundByTheirSharedEdges() throws IOException {
        Wire one = one(t -> 60);
        Wire two = two(t -> 30);
        CheckResult result =
                bench(one(t -> 60).tiedTo(two), two(t -> 30).tiedTo(one)).check();
        top(result, Place.SIGNAL_WIRE, Kind.SHORT_BETWEEN_CHANNELS, "signal1", "signal2");
    }

    @Test
    void spikesOnBothWiresAtOnceAreInterference() throws IOException {
        Wire one = one(t -> 30);
        Wire two = two(t -> 30);
        for (double seconds = 0.2037; seconds < 1.9; seconds += 0.3171) {
            one.spike(seconds, 60e-6);
            two.spike(seconds, 60e-6);
        }
        top(bench(one, two).check(), Place.INTERFERENCE, null, "signal1", "signal2");
    }

    @Test
    void aContactThatBouncesOnOneWireIsThatWire() throws IOException {
        Wire one = one(t -> 30);
        for (double seconds : new double[] {0.51, 0.5101, 0.5151, 0.5203, 0.5252, 1.31, 1.3151, 1.3202}) {
            one.spike(seconds + 0.0021, 40e-6);
        }
        top(bench(one, two(t -> 30)).check(), Place.SIGNAL_WIRE, Kind.INTERMITTENT, "signal1");
    }

    @Test
    void aCoarseRecordingIsNotBlamedOnTheSensor() throws IOException {
        CheckResult result = Bench.at(4000, 2)
                .wire("signal1", one(t -> 0))
                .wire("signal2", two(t -> 0))
                .check();
        assertThat(result.verdict()).as("%s", result.lines()).isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(result.suspects().get(0).place()).isEqualTo(Place.RECORDING);
    }

    private static void assertFails(CheckResult result, String... items) {
        assertThat(result.lines())
                .filteredOn(it -> it.result() == LineResult.FAIL)
                .extracting(Line::item)
                .contains(items);
        assertThat(result.verdict()).isEqualTo(Verdict.DOES_NOT_CONFORM);
    }

    private static void top(CheckResult result, Place place, Kind kind, String... channels) {
        Suspect top = result.suspects().get(0);
        assertThat(top.place()).as("%s\n%s", result.suspects(), result.lines()).isEqualTo(place);
        assertThat(top.kind()).as("%s", result.suspects()).isEqualTo(Optional.ofNullable(kind));
        if (channels.length > 0) {
            assertThat(top.channels()).containsExactly(channels);
        }
    }

    private static Bench bench(Wire one, Wire two) {
        return Bench.seconds(2).wire("signal1", one).wire("signal2", two);
    }

    /** Released, pressed and back once a second, faster than 50 %/s most of the time. */
    private static double sweep(double seconds) {
        return 50 - 50 * Math.cos(2 * Math.PI * seconds);
    }

    private static Wire one(DoubleUnaryOperator travelPercent) {
        return Wire.activeHigh(200.2, 0.0011, t -> 10 + 0.35 * travelPercent.applyAsDouble(t));
    }

    private static Wire two(DoubleUnaryOperator travelPercent) {
        return Wire.activeLow(198.9, 0.0033, t -> 20 + 0.7 * travelPercent.applyAsDouble(t));
    }
}
