// SPDX-License-Identifier: EPL-2.0
package org.dutywright.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.dutywright.sensor.Sensor.Agreement;
import org.dutywright.sensor.Sensor.Decision;
import org.dutywright.sensor.Sensor.Duty;
import org.dutywright.sensor.Sensor.EventRule;
import org.dutywright.sensor.Sensor.Input;
import org.dutywright.sensor.Sensor.Limit;
import org.dutywright.sensor.Sensor.Origin;
import org.dutywright.sensor.Sensor.Quantity;
import org.dutywright.sensor.Sensor.Range;
import org.dutywright.sensor.Sensor.SensorChannel;
import org.dutywright.text.Problem;
import org.dutywright.text.ProblemsException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SensorTextTest {
    private static final String MINIMAL = "schema: dutywright.sensor/1\nid: a\nchannels:\n  - name: one\n";

    private static List<String> problemsOf(String text) {
        ProblemsException thrown =
                catchThrowableOfType(ProblemsException.class, () -> SensorText.parse("s.yaml", text));
        return thrown == null
                ? List.of()
                : thrown.problems().stream().map(Problem::toString).toList();
    }

    private static Optional<Range> range(Double min, Double max) {
        return Optional.of(new Range(
                Optional.ofNullable(min).map(v -> new Limit(v, false)),
                Optional.ofNullable(max).map(v -> new Limit(v, false))));
    }

    // every value is the one of the public interface's example
    @Test
    void theBuiltInPedalSensorHasTheValuesOfThePublicExample() {
        Sensor sensor = Catalogue.builtIn().find("twin-pedal-200").orElseThrow().sensor();
        SensorChannel signal1 = new SensorChannel(
                "signal1",
                true,
                range(180.0, 220.0),
                range(null, 1.0),
                Optional.of(new Range(Optional.of(new Limit(75, true)), Optional.of(new Limit(16, false)))),
                Optional.of(new Input(3.5, 1.5)),
                Optional.of(new Duty(10, 45, OptionalDouble.of(2), OptionalDouble.of(5), OptionalDouble.of(95))),
                OptionalDouble.of(100e-6));
        SensorChannel signal2 = new SensorChannel(
                "signal2",
                false,
                range(180.0, 220.0),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new Duty(20, 90, OptionalDouble.of(3), OptionalDouble.of(5), OptionalDouble.of(95))),
                OptionalDouble.empty());
        assertThat(sensor)
                .isEqualTo(new Sensor(
                        "twin-pedal-200",
                        "Twin-channel pedal position sensor, fixed 200 Hz carrier",
                        new Origin("Demonstration data, invented", "1", "2026-11-25"),
                        new Quantity("pedal travel", "%", 0, 100),
                        range(9.0, 32.0),
                        List.of(signal1, signal2),
                        Optional.of(new Agreement(4, OptionalDouble.of(8), OptionalDouble.of(50), 0.2)),
                        Map.of("runt", new EventRule(OptionalLong.of(0))),
                        new Decision(Decision.Rule.THREE_WAY, 2)));
    }

    @Test
    void everyLimitMayBeAbsent() throws ProblemsException {
        Sensor sensor = SensorText.parse("s.yaml", MINIMAL);
        assertThat(sensor.channels()).hasSize(1);
        assertThat(sensor.channels().getFirst().activeHigh()).isTrue();
        assertThat(sensor.channels().getFirst().frequency()).isEmpty();
        assertThat(sensor.agreement()).isEmpty();
        assertThat(sensor.decision()).isEqualTo(new Decision(Decision.Rule.THREE_WAY, 2));
    }

    @Test
    void allProblemsOfATextAreReportedAtOnceWithTheirPlaces() {
        String text = """
                schema: dutywright.sensor/2
                id: twin pedal
                suply: {min: 9 V}
                channels:
                  - name: signal1
                    active: hihg
                    frequency: {min: 5 ms, max: 220}
                    lowLevel: {min: 2 V, max: 1 V}
                    duty: {released: 10 %, pressed: 10 %, tolerance: -2 %, valid: {min: 95 %, max: 5 %}}
                    transition: {max: 10 % of supply}
                  - name: signal1
                    highLevel: {}
                agreement: {tolerance: 4 %, moving: 8 %, confirmation: 200}
                events: {rutn: {max: 0}, dropout: never, bounce: {max: -1}}
                decision: {rule: strict, coverage: 0}
                """;
        assertThat(problemsOf(text))
                .containsExactly(
                        "s.yaml:1:9: 'schema': 'dutywright.sensor/2' is not a schema that this version reads; write dutywright.sensor/1",
                        "s.yaml:2:5: 'id': 'twin pedal' may have letters, digits, dots and dashes only",
                        "s.yaml:3:1: unknown key 'suply' in a sensor text; did you mean 'supply'?",
                        "s.yaml:6:13: 'active': 'hihg' is not known here; did you mean 'high'?",
                        "s.yaml:7:22: 'min': '5 ms' is a time, not a frequency; write for example 180 Hz",
                        "s.yaml:7:33: 'max': '220' has no unit of frequency; write for example 180 Hz",
                        "s.yaml:8:16: 'min' is above 'max' in 'lowLevel'; exchange the two",
                        "s.yaml:9:28: 'released' and 'pressed' are equal, so the duty could not tell the position",
                        "s.yaml:9:54: 'tolerance': '-2 %' must not be below 0",
                        "s.yaml:9:60: 'min' must be below 'max' in 'valid'",
                        "s.yaml:10:23: 'max': '% of supply' is not a unit of time; write for example 100 us",
                        "s.yaml:11:5: the channel 'signal1' stands here a second time",
                        "s.yaml:12:16: 'highLevel' needs min, max or both; write for example {max: 9 V}",
                        "s.yaml:13:1: 'agreement' needs two channels with the end points of their duty",
                        "s.yaml:13:29: 'moving' and 'movingAbove' go together; write for example moving: 8 %, movingAbove: 50 %/s",
                        "s.yaml:13:56: 'confirmation': '200' has no unit of time; write for example 100 us",
                        "s.yaml:14:10: unknown key 'rutn' in 'events'; did you mean 'runt'?",
                        "s.yaml:14:35: 'dropout': 'never' is not known here; known are ignore",
                        "s.yaml:14:56: 'max': '-1' is not a whole number from 0 to 1000000000",
                        "s.yaml:15:18: 'rule': 'strict' is not known here; known are simple, guarded-acceptance, three-way",
                        "s.yaml:15:26: 'coverage' must be above 0; write for example 2");
    }

    @Test
    void whatMustBeThereIsAskedFor() {
        assertThat(problemsOf("title: x\n"))
                .containsExactly(
                        "s.yaml:1:1: a sensor text needs the key 'schema'",
                        "s.yaml:1:1: a sensor text needs the key 'id'",
                        "s.yaml:1:1: a sensor text needs the key 'channels'");
        assertThat(problemsOf("- 1\n"))
                .containsExactly("s.yaml:1:1: a sensor text needs keys with values, but this is a list");
    }

    @Test
    void anEndPointOutsideTheValidBandIsAMistake() {
        assertThat(problemsOf(MINIMAL + "    duty: {released: 3 %, pressed: 90 %, valid: {min: 5 %}}\n"))
                .containsExactly(
                        "s.yaml:5:12: 'released' lies outside the band of 'valid'; no reading there could pass");
    }

    @ParameterizedTest
    @CsvSource({"24, 18", "12, 9"})
    void aPartOfTheSupplyFollowsTheSupply(double supplyVolts, double expectedVolts) throws ProblemsException {
        Sensor sensor = SensorText.parse("s.yaml", MINIMAL + "    highLevel: {min: 75 % of supply}\n");
        Limit min = sensor.channels().getFirst().highLevel().orElseThrow().min().orElseThrow();
        assertThat(min.resolve(OptionalDouble.of(supplyVolts))).hasValue(expectedVolts);
        assertThat(min.resolve(OptionalDouble.empty())).isEmpty();
    }

    @Test
    void anIgnoredKindOfEventHasNoLimit() throws ProblemsException {
        Sensor sensor = SensorText.parse("s.yaml", MINIMAL + "events: {runt: {max: 3}, level-shift: ignore}\n");
        assertThat(sensor.events())
                .isEqualTo(Map.of(
                        "runt", new EventRule(OptionalLong.of(3)), "level-shift", new EventRule(OptionalLong.empty())));
    }
}
