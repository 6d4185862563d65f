// SPDX-License-Identifier: EPL-2.0
package org.dutywright.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
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
    private static final String MINIMAL = "schema: dutywright.sensor/1\nid: a\ntitle: A\nchannels:\n  - name: one\n";

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

    // made by hand in the range that real sensors have, no maker's
    @Test
    void theBuiltInThrottleSensorHasOneChannelAt500Hertz() {
        Sensor sensor =
                Catalogue.builtIn().find("single-throttle-500").orElseThrow().sensor();
        assertThat(sensor.channels())
                .containsExactly(new SensorChannel(
                        "signal1",
                        true,
                        range(450.0, 550.0),
                        range(null, 0.8),
                        range(4.2, 8.5),
                        Optional.of(new Input(3.0, 1.5)),
                        Optional.of(
                                new Duty(16, 82, OptionalDouble.of(6), OptionalDouble.of(5), OptionalDouble.of(95))),
                        OptionalDouble.of(50e-6)));
        assertThat(sensor.supply()).isEqualTo(range(7.5, 8.5));
        assertThat(sensor.agreement()).isEmpty();
        assertThat(sensor.events()).isEmpty();
        assertThat(sensor.decision()).isEqualTo(new Decision(Decision.Rule.THREE_WAY, 2));
    }

    /** The golden file was read line by line against the rules of the public interface before it was accepted. */
    @Test
    void allProblemsOfATextAreReportedAtOnceWithTheirPlaces() throws IOException {
        String found = String.join("\n", problemsOf(resource("broken-sensor.yaml"))) + "\n";
        if (!found.equals(resource("broken-sensor.problems.txt"))) {
            Path beside = Files.writeString(Path.of("target", "broken-sensor.problems.txt"), found);
            assertThat(found)
                    .as("to accept, copy %s over the file of that name in src/test/resources", beside)
                    .isEqualTo(resource("broken-sensor.problems.txt"));
        }
    }

    private static String resource(String name) throws IOException {
        try (InputStream stream = SensorTextTest.class.getResourceAsStream(name)) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void whatMustBeThereIsAskedFor() {
        assertThat(problemsOf("title: x\n"))
                .containsExactly(
                        "s.yaml:1:1: a sensor text needs the key 'schema'; write for example schema: dutywright.sensor/1",
                        "s.yaml:1:1: a sensor text needs the key 'channels' with a list, each entry after a dash",
                        "s.yaml:1:1: a sensor text needs the key 'id'; write for example id: pedal-200");
        assertThat(problemsOf("schema: dutywright.sensor/1\nid: a\nchannels: []\n"))
                .containsExactly(
                        "s.yaml:1:1: a sensor text needs the key 'title'; write for example title: Pedal position sensor",
                        "s.yaml:3:1: 'channels' needs at least one entry; write for example - name: signal1");
        assertThat(problemsOf(MINIMAL.replace("\n  - name: one", " one")))
                .containsExactly(
                        "s.yaml:4:11: 'channels' needs a list, each entry after a dash, but this is the single value 'one'");
        assertThat(problemsOf("- 1\n"))
                .containsExactly("s.yaml:1:1: a sensor text needs keys with values, but this is a list");
    }

    @Test
    void anEndPointOutsideTheValidBandIsAMistake() {
        assertThat(problemsOf(MINIMAL + "    duty: {released: 3 %, pressed: 90 %, valid: {min: 5 %}}\n"))
                .containsExactly(
                        "s.yaml:6:12: 'released' lies outside the band of 'valid'; no reading there could pass,"
                                + " widen the band");
    }

    @Test
    void movingNeedsBothOfItsKeysAndIsNeverStricterThanRest() {
        String text = MINIMAL.replace("  - name: one\n", "");
        String channel = "  - {name: %s, duty: {released: 10 %%, pressed: 90 %%}}\n";
        String twin = text + channel.formatted("one") + channel.formatted("two") + "agreement: ";
        assertThat(problemsOf(twin + "{tolerance: 4 %, confirmation: 0 s}\n")).isEmpty();
        assertThat(problemsOf(twin + "{tolerance: 4 %, confirmation: 0 s, movingAbove: 50 %/s}\n"))
                .containsExactly("s.yaml:7:48: 'moving' and 'movingAbove' go together;"
                        + " write for example moving: 8 %, movingAbove: 50 %/s");
        assertThat(problemsOf(twin + "{tolerance: 4 %, confirmation: 0 s, moving: 3 %, movingAbove: 50 %}\n"))
                .containsExactly(
                        "s.yaml:7:48: 'moving' is below 'tolerance'; a moving sensor can't be held to less than at rest",
                        "s.yaml:7:74: 'movingAbove': '50 %' is a share, not a share per time; write for example 50 %/s");
    }

    @Test
    void aBrokenDutyIsNoMissingDuty() {
        String channels = """
                  - {name: two, duty: {released: 10 %, pressed: 90}}
                  - {name: three, duty: {released: 10 %, pressed: 90 %}}
                """;
        assertThat(problemsOf(MINIMAL + channels + "agreement: {tolerance: 4 %, confirmation: 0 s}\n"))
                .containsExactly("s.yaml:6:49: 'pressed': '90' has no unit of share; write for example 10 %");
    }

    @Test
    void anotherKindOfTextIsOneProblem() {
        assertThat(problemsOf("schema: dutywright.scenario/1\nrecording: {}\n"))
                .containsExactly(
                        "s.yaml:1:9: 'schema': 'dutywright.scenario/1' is not a schema that this version reads;"
                                + " write dutywright.sensor/1");
    }

    @Test
    void everyKindOfEventMayBeNamed() throws ProblemsException {
        for (String kind : SensorText.EVENT_KINDS) {
            Sensor sensor = SensorText.parse("s.yaml", MINIMAL + "events: {" + kind + ": {max: 2}}\n");
            assertThat(sensor.events()).isEqualTo(Map.of(kind, new EventRule(OptionalLong.of(2))));
        }
        assertThat(SensorText.EVENT_KINDS).hasSize(11).containsAll(SensorText.JUDGED_EVENTS);
    }

    @Test
    void aChannelMayHaveAnyNameThatAColumnHas() throws ProblemsException {
        Sensor sensor = SensorText.parse("s.yaml", MINIMAL.replace("one", "Größe_1 (left)"));
        assertThat(sensor.channels().getFirst().name()).isEqualTo("Größe_1 (left)");
        assertThat(problemsOf(MINIMAL.replace("one", "\"a\\tb\"")))
                .containsExactly("s.yaml:5:11: 'name': 'a\\u0009b' must stand on one line, without control characters");
    }

    // a whole text, each time with one random character changed, added or taken away
    @Test
    void aDamagedTextIsReadOrItsProblemsHavePlacesInIt() {
        String text = Catalogue.builtIn().find("twin-pedal-200").orElseThrow().text();
        int lines = (int) text.lines().count();
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(11);
        String alphabet = "ab:-[]{}&*!|>'\"%@`#,? \n\t09.";
        for (int i = 0; i < 2_000; i++) {
            int at = random.nextInt(text.length());
            String put =
                    random.nextInt(3) == 0 ? "" : String.valueOf(alphabet.charAt(random.nextInt(alphabet.length())));
            String damaged = text.substring(0, at) + put + text.substring(at + random.nextInt(2));
            // any other exception would fail here; a line may have been added
            assertThat(problemsOf(damaged)).allSatisfy(problem -> {
                assertThat(problem).matches("s\\.yaml:\\d+:\\d+: \\S.*");
                assertThat(Integer.parseInt(problem.split(":", -1)[1])).isBetween(1, lines + 2);
            });
        }
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
