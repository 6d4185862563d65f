// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.dutywright.text.Problem;
import org.dutywright.text.ProblemsException;
import org.junit.jupiter.api.Test;

class ScenarioTextTest {

    private static final String GOOD = """
            schema: dutywright.scenario/1
            id: bench-1
            title: A bench
            sensor: twin-pedal-200
            seed: 7
            recording:
              sampleRate: 100 kHz
              duration: 2 s
            channels:
              - name: signal1
                carrier: 200 Hz
                low: 0.4 V
                high: 12.3 V
            """;

    private static Scenario parse(String text) throws ProblemsException {
        return Scenario.parse("bench.yaml", text);
    }

    private static List<String> problems(String text) {
        ProblemsException thrown = catchThrowableOfType(ProblemsException.class, () -> parse(text));
        assertThat(thrown).as("the text must be refused").isNotNull();
        return thrown.problems().stream().map(Problem::toString).toList();
    }

    @Test
    void aShortTextTakesItsDutyAndActiveLevelFromTheSensor() throws ProblemsException {
        Scenario scenario = parse(GOOD);
        ChannelModel channel = scenario.channels().get(0);
        assertThat(channel.activeHigh()).isTrue();
        // The end points of the built-in sensor.
        assertThat(channel.duty()).isEqualTo(new DutyLaw.EndPoints(10, 45));
        assertThat(scenario.recording().format()).isEqualTo(Recording.Format.standard());
        assertThat(scenario.travel().at(1)).isEqualTo(0);
        assertThat(scenario.faults()).isEmpty();
    }

    @Test
    void everythingThatATextMaySayIsRead() throws ProblemsException {
        Scenario scenario = parse("""
                schema: dutywright.scenario/1
                id: bench-1
                title: A bench
                note: Invented.
                sensor: unknown-sensor
                seed: 7
                recording:
                  sampleRate: 50 kHz
                  start: -250 ms
                  duration: 4 s
                  noise: 10 mV
                  quantisation: {bits: 8, min: -1 V, max: 15 V}
                  pauses: [{from: 1 s, to: 1.5 s}]
                  timeColumn: false
                  timeUnit: ms
                  valueUnit: mV
                  decimals: 2
                supply: {volts: 12 V, recordedAs: feed, noise: 5 mV}
                travel:
                  - {at: 0 s, travel: 10 %}
                  - {at: 1 s, strokes: 2, to: 90 %, press: 100 ms, hold: 200 ms, release: 100 ms, rest: 300 ms}
                channels:
                  - name: signal1
                    active: low
                    carrier: 200 Hz
                    phase: 25 %
                    duty: {released: 10 %, pressed: 45 %}
                    low: 0.4 V
                    high: 12.3 V
                    rise: {timeConstant: 8 us}
                    fall: 20 us
                    jitter: 2 us
                    noise: 20 mV
                  - name: signal2
                    active: high
                    carrier: 190 Hz
                    duty: [{at: 0 s, duty: 10 %}, {at: 2 s, duty: 30 %}]
                    low: 0 V
                    high: 5 V
                knownPosition: pressed
                expect: {verdict: does-not-conform, because: [signal1.frequency], suspect: sensor}
                """);
        Recording recording = scenario.recording();
        assertThat(recording.sampleRateHz()).isEqualTo(50_000);
        assertThat(recording.startSeconds()).isEqualTo(-0.25);
        assertThat(recording.quantisation()).contains(Quantisation.ofBits(8, -1, 15));
        assertThat(recording.pauses()).containsExactly(new Recording.Pause(1, 1.5));
        assertThat(recording.format()).isEqualTo(new Recording.Format(false, "ms", "mV", OptionalInt.of(2)));
        assertThat(scenario.supply()).contains(new Supply(12, Optional.of("feed"), 0.005));
        // Two strokes of 100 + 200 + 100 + 300 ms from 1 s on: in the second hold, and at rest behind.
        assertThat(scenario.travel().at(1.9)).isCloseTo(90, within(1e-9));
        assertThat(scenario.travel().at(1.05)).isCloseTo(50, within(1e-9));
        assertThat(scenario.travel().at(3)).isEqualTo(10);
        assertThat(scenario.channels().get(0))
                .isEqualTo(new ChannelModel(
                        "signal1",
                        false,
                        200,
                        25,
                        new DutyLaw.EndPoints(10, 45),
                        0.4,
                        12.3,
                        new EdgeShape.Exponential(8e-6),
                        new EdgeShape.Ramp(20e-6),
                        2e-6,
                        0.02));
        assertThat(scenario.channels().get(1).noiseVolts()).isEqualTo(0.01);
        assertThat(scenario.channels().get(1).duty().dutyPercent(1, 0)).isEqualTo(20);
        assertThat(scenario.knownPosition()).contains("pressed");
        assertThat(scenario.expectation())
                .contains(new Expectation("does-not-conform", List.of("signal1.frequency"), Optional.of("sensor")));
    }

    @Test
    void allProblemsOfATextAreReportedWithTheirPlaces() {
        assertThat(problems("""
                        schema: dutywright.scenario/1
                        id: bench 1
                        titel: A bench
                        sensor: twin-pedal-200
                        seed: -1
                        recording:
                          sampleRate: 10 us
                          duration: 2
                          pauses: [{from: 1 s}]
                        channels:
                          - name: signal1
                            carrier: 200 Hz
                            low: 0.4 V
                            high: 0.2 V
                          - name: signal1
                            active: up
                            carrier: 0 Hz
                            low: 0.4 V
                            high: 12.3 V
                        expect: {verdict: conform}
                        """))
                .containsExactly(
                        "bench.yaml:1:1: a scenario needs the key 'title'",
                        "bench.yaml:2:5: 'id': 'bench 1' may have letters, digits, dots and dashes only",
                        "bench.yaml:3:1: unknown key 'titel' in a scenario; did you mean 'title'?",
                        "bench.yaml:5:7: 'seed': '-1' is not a whole number from 0 to 1000000000000000",
                        "bench.yaml:7:15: 'sampleRate': '10 us' is a time, not a frequency; write for example 180 Hz",
                        "bench.yaml:8:13: 'duration': '2' has no unit of time; write for example 100 us",
                        "bench.yaml:14:5: 'high' must be above 'low'",
                        "bench.yaml:15:5: a channel named 'signal1' stands above",
                        "bench.yaml:16:13: 'active': 'up' is not known here; known are high, low",
                        "bench.yaml:17:14: 'carrier': '0 Hz' must be above 0",
                        "bench.yaml:20:19: 'verdict': 'conform' is not known here; did you mean 'conforms'?");
    }

    @Test
    void whatTheSensorDoesNotSayMustStandInTheText() {
        assertThat(problems(GOOD.replace("name: signal1", "name: signal9")))
                .containsExactly(
                        "bench.yaml:10:5: a channel needs the key 'active': the sensor has no channel of this name",
                        "bench.yaml:10:5: a channel needs the key 'duty': the sensor has none for this name");
    }

    @Test
    void aRecordingHasBounds() {
        assertThat(problems(GOOD.replace("duration: 2 s", "duration: 3000000 s")))
                .containsExactly("bench.yaml:8:3: 3.000e+11 samples (sampleRate times duration) are not within 1 and"
                        + " 2.000e+11");
        assertThat(problems(GOOD.replace("carrier: 200 Hz", "carrier: 25 kHz")))
                .containsExactly("bench.yaml:11:5: 'carrier' must be below a quarter of the sample rate");
        assertThat(problems(GOOD.replace("duration: 2 s", "duration: 2 s\n  pauses: [{from: 0 s, to: 2 s}]")))
                .containsExactly("bench.yaml:9:3: the pauses leave no sample of the recording; shorten them");
        assertThat(problems(GOOD.replace("duration: 2 s", "duration: 2 s\n  pauses: [{from: 1 s, to: 3 s}]")))
                .containsExactly(
                        "bench.yaml:9:12: a pause must lie inside the recording and after the pause before it");
    }

    @Test
    void aPositionWhoseTimeRunsBackwardsIsRefused() {
        assertThat(problems(GOOD + "travel: [{at: 1 s, travel: 5 %}, {at: 0.5 s, travel: 120 %}]\n"))
                .containsExactly("bench.yaml:14:54: 'travel': '120 %' must lie in 0 % to 100 %");
        assertThat(problems(GOOD + "travel: [{at: 1 s, travel: 5 %}, {at: 0.5 s, travel: 20 %}]\n"))
                .containsExactly("bench.yaml:14:35: time runs backwards: the point before ends later");
        assertThat(problems(GOOD + "travel: [{at: 1 s, stroke: 5}]\n"))
                .containsExactly(
                        "bench.yaml:14:10: a point of 'travel' needs the key 'travel'",
                        "bench.yaml:14:20: unknown key 'stroke' in a point of 'travel'; did you mean 'strokes'?");
    }

    @Test
    void faultsOutsideOfTheRecordingOrBackToFrontAreRefused() {
        assertThat(problems(GOOD + """
                                faults:
                                  - {kind: missing-pulse, channel: signal1, at: 2 s}
                                  - {kind: signal-open, channel: signal1, from: 1 s, to: 0.5 s}
                                  - {kind: signal-open, channel: signal1, from: 1 s, to: 2.5 s}
                                  - {kind: runt, channel: signal1, at: 1 s, reach: 50 %, every: 1 s, times: 3}
                                """))
                .containsExactly(
                        "bench.yaml:15:45: 'at' lies outside of the recording, which runs from 0.0 s to 2.0 s",
                        "bench.yaml:16:54: 'to' must come after 'from'",
                        "bench.yaml:17:54: 'to' lies outside of the recording, which runs from 0.0 s to 2.0 s",
                        "bench.yaml:18:70: the last repetition lies behind the end of the recording");
    }

    @Test
    void aFaultKnowsTheKeysOfItsKind() {
        assertThat(problems(GOOD + """
                                faults:
                                  - {kind: missing-puls, channel: signal1, at: 1 s}
                                  - {kind: missing-pulse, channel: signal3, at: 1 s, pulse: 2}
                                  - {kind: runt, at: 1 s}
                                  - {kind: supply-loss, from: 1 s, to: 1.1 s}
                                  - {kind: frequency, channel: signal1, carrier: 190 Hz, factor: 0.9}
                                  - {kind: bounce, channel: signal1, at: 1 s, spacing: 1 ms}
                                  - {kind: level-shift, channel: signal1, low: 9 V, high: -3 V}
                                """))
                .containsExactly(
                        "bench.yaml:15:12: 'kind': 'missing-puls' is not known here; did you mean 'missing-pulse'?",
                        "bench.yaml:16:36: 'channel': 'signal3' is not known here; did you mean 'signal1'?",
                        "bench.yaml:16:54: unknown key 'pulse' in a fault; did you mean 'pulses'?",
                        "bench.yaml:17:5: a fault of this kind needs the key 'channel' or 'channels'",
                        "bench.yaml:17:5: a fault needs the key 'reach'",
                        "bench.yaml:18:5: a fault needs the key 'restart'",
                        "bench.yaml:19:5: a frequency fault needs either the key 'carrier' or the key 'factor'",
                        "bench.yaml:20:47: the bounces must be over within 5 % of the period; two a pair, and each distance"
                                + " may be 30 % longer than 'spacing'",
                        "bench.yaml:21:53: the low level would not stay below the high one");
    }

    @Test
    void aSensorCannotLoseItsSupplyWhileItHasNone() {
        assertThat(problems(GOOD + """
                                faults:
                                  - {kind: supply-loss, from: 1 s, to: 1.1 s, restart: 50 ms}
                                  - {kind: supply-loss, from: 1.12 s, to: 1.2 s, restart: 50 ms}
                                """))
                .containsExactly("bench.yaml:16:5: this fault of signal1 begins before another of its kind is over");
    }

    @Test
    void everyKindOfFaultIsReadAndRepeated() throws ProblemsException {
        Scenario scenario = parse(GOOD + """
                        faults:
                          - {kind: missing-pulse, channel: signal1, at: [0.1 s, 0.2 s], pulses: 2}
                          - {kind: runt, channels: [signal1], at: 0.3 s, reach: 40 %, every: 0.5 s, times: 3}
                          - {kind: bounce, channel: signal1, at: 0.3 s, spacing: 20 us, pairs: 2, after: inactive}
                          - {kind: extra-pulse, channel: signal1, at: 0.3 s, width: 100 us}
                          - {kind: signal-open, channel: signal1, from: 1 s, to: 1.1 s}
                          - {kind: supply-loss, from: 1.2 s, to: 1.3 s, restart: 20 ms, level: 0 V, lost: ground}
                          - {kind: ground-lift, by: 1 V}
                          - {kind: level-shift, channel: signal1, high: -1 V, from: 1 s}
                          - {kind: frequency, channel: signal1, carrier: 150 Hz, to: 1 s}
                          - {kind: ratio, channel: signal1, gain: 1.1, offset: -2 %}
                          - {kind: duty-jump, channel: signal1, travel: 40 %, width: 3 %, offset: 8 %}
                          - {kind: stuck-low, channel: signal1, from: 1.9 s}
                          - {kind: stuck-high, channel: signal1, from: 1.95 s, level: 11 V}
                          - {kind: slow-edges, channel: signal1, rise: {timeConstant: 50 us}}
                          - {kind: noise-burst, channel: signal1, from: 1 s, to: 1.5 s, rms: 0.3 V}
                        """);
        String name = "signal1";
        assertThat(scenario.faults())
                .containsExactly(
                        new Fault.MissingPulse(name, 0.1, 2),
                        new Fault.MissingPulse(name, 0.2, 2),
                        new Fault.Runt(name, 0.3, 1, 40),
                        new Fault.Runt(name, 0.8, 1, 40),
                        new Fault.Runt(name, 1.3, 1, 40),
                        new Fault.Bounce(name, 0.3, 2, 20e-6, false),
                        new Fault.ExtraPulse(name, 0.3, 100e-6, 100),
                        new Fault.SignalOpen(name, 1, 1.1, 12.3),
                        new Fault.SupplyLoss(name, 1.2, 1.3, 0.02, 0, java.util.OptionalDouble.empty(), false),
                        new Fault.GroundLift(name, 0, 2, 1, false),
                        new Fault.LevelShift(name, 1, 2, 0, -1),
                        new Fault.Frequency(name, 0, 1, 0.75),
                        new Fault.Ratio(name, 0, 2, 1.1, -2),
                        new Fault.DutyJump(name, 0, 2, 40, 3, 8),
                        new Fault.Stuck(name, 1.9, 2, false, 0.4),
                        new Fault.Stuck(name, 1.95, 2, true, 11),
                        new Fault.SlowEdges(
                                name, 0, 2, Optional.of(new EdgeShape.Exponential(50e-6)), Optional.empty()),
                        new Fault.NoiseBurst(name, 1, 1.5, 0.3));
    }
}
