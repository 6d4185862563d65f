// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Recordings that cannot carry a verdict, and odd ones, as a user meets them on the command line. */
final class RecordingFaultsTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Pattern COMMA = Pattern.compile(",");

    @TempDir
    private Path folder;

    private Path write(String name, List<String> lines) throws IOException {
        return Files.write(folder.resolve(name + ".csv"), lines);
    }

    /** One channel at 100 kS/s. */
    private Path signal(String name, int samples, DoubleUnaryOperator volts) throws IOException {
        List<String> lines = new ArrayList<>(List.of("time (s),signal1 (V)"));
        for (int i = 0; i < samples; i++) {
            lines.add(String.format(Locale.ROOT, "%.5f,%.6g", i / 1e5, volts.applyAsDouble(i / 1e5)));
        }
        return write(name, lines);
    }

    private static double pulses(double seconds) {
        return (seconds * 203.7 + 0.4) % 1 < 0.3 ? 12 : 0.4;
    }

    private static JsonNode measure(Path csv, Object... more) throws IOException {
        List<Object> words = new ArrayList<>(List.of("measure", csv, "--json", "-", "--role", "signal1=pwm"));
        words.addAll(List.of(more));
        Run run = Run.of(words.toArray());
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.out()).doesNotContain("NaN").doesNotContain("Infinity");
        return MAPPER.readTree(run.out());
    }

    private static JsonNode fitness(JsonNode capture, String item) {
        for (JsonNode line : capture.get("fitness")) {
            if (line.get("item").asText().equals(item)) {
                return line;
            }
        }
        throw new AssertionError(item + " is not in " + capture.get("fitness"));
    }

    private static void assertFitness(JsonNode capture, String item, String result) {
        JsonNode line = fitness(capture, item);
        assertThat(line.get("result").asText()).as("%s", line).isEqualTo(result);
        assertThat(line.get("reason").asText()).isNotBlank();
    }

    private static JsonNode line(JsonNode check, String item) {
        for (JsonNode line : check.get("lines")) {
            if (line.get("item").asText().equals(item)) {
                return line;
            }
        }
        throw new AssertionError(item);
    }

    private Path healthy() throws IOException {
        return Texts.simulate(folder, "healthy", Texts.HEALTHY);
    }

    private static Run check(Path csv, Object... more) {
        List<Object> words =
                new ArrayList<>(List.of("check", csv, "--sensor", "twin-pedal-200", "--supply", "12", "--json", "-"));
        words.addAll(List.of(more));
        return Run.of(words.toArray());
    }

    @Test
    void everyLineOfAHealthyRecordingIsGood() throws IOException {
        Run run = check(healthy());
        assertThat(run.status()).as(run.out()).isZero();
        JsonNode capture = MAPPER.readTree(run.out()).get("measure").get("capture");
        assertThat(capture.get("fitness")).hasSizeGreaterThan(15);
        assertThat(capture.get("fitness"))
                .allSatisfy(line ->
                        assertThat(line.get("result").asText()).as("%s", line).isEqualTo("good"));
    }

    @Test
    void aStatedRateThatDoesNotMatchTheTimeColumnLeavesTheFrequencyOpen() throws IOException {
        List<String> lines = new ArrayList<>(List.of("Sample rate: 100 kHz"));
        lines.addAll(Files.readAllLines(healthy()));
        Run run = check(write("stated", lines));
        assertThat(run.status()).isEqualTo(2);
        JsonNode document = MAPPER.readTree(run.out());
        assertFitness(document.get("measure").get("capture"), "capture.sampleRate", "poor");
        assertThat(line(document, "signal1.frequency").get("result").asText()).isEqualTo("inconclusive");
        assertThat(line(document, "signal1.frequency").get("reason").asText()).contains("100 kHz by line 1");
        assertThat(line(document, "signal1.duty").get("result").asText()).isEqualTo("pass");

        Run option = check(healthy(), "--sample-rate", "25000");
        assertThat(option.status()).isEqualTo(2);
        assertThat(option.out()).contains("25 kHz by --sample-rate");
    }

    @Test
    void levelsATenthOfTheSensorsNameTheScaleThatTheUserMayGive() throws IOException {
        List<String> lines = new ArrayList<>();
        for (String text : Files.readAllLines(healthy())) {
            List<String> cells = COMMA.splitAsStream(text).toList();
            boolean numbers =
                    Character.isDigit(cells.get(1).charAt(0)) || cells.get(1).charAt(0) == '-';
            lines.add(
                    numbers
                            ? String.format(
                                    Locale.ROOT,
                                    "%s,%.6f,%s",
                                    cells.get(0),
                                    Double.parseDouble(cells.get(1)) / 10,
                                    cells.get(2))
                            : text);
        }
        Path csv = write("probe", lines);
        Run run = check(csv);
        assertThat(run.status()).as(run.out()).isEqualTo(2);
        JsonNode document = MAPPER.readTree(run.out());
        assertFitness(document.get("measure").get("capture"), "signal1.probeFactor", "poor");
        assertThat(run.out()).contains("--scale signal1=10");
        assertThat(line(document, "signal1.highLevel").get("measured").asDouble())
                .isCloseTo(1.2, within(0.01));
        assertThat(check(csv, "--scale", "signal1=10").status()).isZero();
        Run text = Run.of("check", csv, "--sensor", "twin-pedal-200", "--supply", "12");
        assertThat(text.out()).contains("signal1.probeFactor").contains("--scale signal1=10");
    }

    @Test
    void pairsOfExtremesAreInconclusive() throws IOException {
        Random random = new Random(5);
        List<String> lines = new ArrayList<>(List.of("time (s),signal1 (V)"));
        for (int bin = 0; bin < 20_000; bin++) {
            double least = Double.POSITIVE_INFINITY;
            double most = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < 10; i++) {
                double volts = pulses(bin * 1e-5 + i * 1e-6) + 0.05 * random.nextGaussian();
                least = Math.min(least, volts);
                most = Math.max(most, volts);
            }
            lines.add(String.format(Locale.ROOT, "%.6f,%.4f", bin * 1e-5, least));
            lines.add(String.format(Locale.ROOT, "%.6f,%.4f", bin * 1e-5 + 5e-6, most));
        }
        Path csv = write("reduced", lines);
        assertFitness(measure(csv).get("capture"), "signal1.minMaxPairs", "poor");
        assertThat(check(csv).status()).isEqualTo(2);
    }

    @ParameterizedTest
    @CsvSource({"0.05, stuck-low", "12, stuck-high"})
    void aConstantChannelIsStuck(double volts, String status) throws IOException {
        JsonNode channel =
                measure(signal("constant", 2_000, t -> volts)).get("channels").get(0);
        assertThat(channel.get("status").asText()).isEqualTo(status);
        assertThat(channel.get("frequencyHz").get("mean").isNull()).isTrue();
        assertThat(channel.get("meanVoltage").get("value").isNull()).isTrue();
        assertThat(channel.get("cycles").asLong()).isZero();
    }

    @Test
    void aSineHasNoCyclesMadeUpForIt() throws IOException {
        JsonNode channel = measure(signal("sine", 20_000, t -> 6 + 5 * Math.sin(2 * Math.PI * 203.7 * t)))
                .get("channels")
                .get(0);
        assertThat(channel.get("status").asText()).isEqualTo("no-signal");
        assertThat(channel.get("frequencyHz").get("mean").isNull()).isTrue();
        assertThat(channel.get("events")).isEmpty();
    }

    @Test
    void oneEdgeHasLevelsAndNoFrequency() throws IOException {
        JsonNode document = measure(signal("edge", 5_000, t -> t < 0.02 ? 0.4 : 12));
        assertThat(document.get("channels")
                        .get(0)
                        .get("frequencyHz")
                        .get("mean")
                        .isNull())
                .isTrue();
        assertFitness(document.get("capture"), "signal1.cycles", "unfit");
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 5})
    void aFewSamplesGiveNoNumber(int samples) throws IOException {
        JsonNode channel = measure(signal("few", samples, t -> t > 0 ? 12 : 0))
                .get("channels")
                .get(0);
        assertThat(channel.get("frequencyHz").get("mean").isNull()).isTrue();
        assertThat(channel.get("cycles").asLong()).isZero();
    }

    @Test
    void unevenTimeStampsAreMeasuredWhereTheyAre() throws IOException {
        Random random = new Random(6);
        List<String> lines = new ArrayList<>(List.of("time (s),signal1 (V)"));
        double t = 0;
        for (int i = 0; i < 50_000; i++) {
            lines.add(String.format(Locale.ROOT, "%.9f,%.4f", t, pulses(t)));
            t += 1e-5 * (0.3 + 1.4 * random.nextDouble());
        }
        JsonNode document = measure(write("uneven", lines));
        assertThat(document.get("capture").get("sampleRateHz").isNull()).isTrue();
        // each edge lies between two stamps some 10 us apart, both ends of 0.5 s are off by less than that
        assertThat(document.get("channels")
                        .get(0)
                        .get("frequencyHz")
                        .get("mean")
                        .asDouble())
                .isCloseTo(203.7, within(203.7 * 2e-5 / 0.4));
    }

    @Test
    void missingAndOverflownCellsAreLeftOut() throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(signal("whole", 20_000, RecordingFaultsTest::pulses)));
        lines.set(5_000, "0.04999,inf");
        lines.set(9_000, "0.08999,9.91E37");
        lines.set(12_000, "0.11999,");
        lines.subList(15_000, 15_100).clear();
        JsonNode document = measure(write("holes", lines));
        assertThat(document.get("capture").get("gaps")).hasSize(4);
        assertThat(document.get("channels")
                        .get(0)
                        .get("frequencyHz")
                        .get("mean")
                        .asDouble())
                .isCloseTo(203.7, within(0.1));
        assertThat(document.get("channels").get(0).get("eventCounts")).isEmpty();
    }

    @Test
    void aFloatingInputIsUnreadable() throws IOException {
        Random random = new Random(7);
        boolean[] high = new boolean[1];
        Path csv = signal("floating", 50_000, t -> (high[0] ^= random.nextInt(4) == 0) ? 10 : 0);
        JsonNode document = measure(csv);
        assertThat(document.get("channels").get(0).get("status").asText()).isEqualTo("unreadable");
        assertFitness(document.get("capture"), "signal1.samplesPerPulse", "unfit");
        assertThat(check(csv).status()).isEqualTo(2);
    }

    @Test
    void aRecordingCoupledByAcIsJudgedByItsEdgesOnly() throws IOException {
        List<String> rows = Files.readAllLines(healthy());
        List<String> lines = new ArrayList<>(List.of(rows.get(0)));
        // a single pole of 2 Hz at 50 kS/s that has settled on the mean of each channel
        double kept = Math.exp(-2 * Math.PI * 2 / 50e3);
        double[] before = new double[2];
        double[] seen = new double[2];
        double[] mean = new double[2];
        List<double[]> values = new ArrayList<>();
        for (String row : rows.subList(1, rows.size())) {
            List<String> cells = COMMA.splitAsStream(row).toList();
            values.add(new double[] {Double.parseDouble(cells.get(1)), Double.parseDouble(cells.get(2))});
        }
        for (int channel = 0; channel < 2; channel++) {
            int index = channel;
            mean[channel] =
                    values.stream().mapToDouble(it -> it[index]).average().orElseThrow();
            before[channel] = mean[channel];
        }
        for (int i = 0; i < values.size(); i++) {
            for (int channel = 0; channel < 2; channel++) {
                double now = values.get(i)[channel];
                seen[channel] = kept * (seen[channel] + now - before[channel]);
                before[channel] = now;
            }
            lines.add(String.format(Locale.ROOT, "%.5f,%.4f,%.4f", i / 50e3, seen[0], seen[1]));
        }
        Path csv = write("coupled", lines);
        Run run = check(csv);
        JsonNode document = MAPPER.readTree(run.out());
        assertFitness(document.get("measure").get("capture"), "signal1.coupling", "unfit");
        assertThat(line(document, "signal1.highLevel").get("result").asText()).isEqualTo("not-judged");
        assertThat(line(document, "signal1.highLevel").get("reason").asText()).contains("coupled by AC");
        assertThat(line(document, "signal1.events.level-shift").get("result").asText())
                .isEqualTo("not-judged");
        assertThat(line(document, "signal1.frequency").get("result").asText()).isEqualTo("pass");
        assertThat(line(document, "signal1.duty").get("result").asText()).isEqualTo("pass");
        JsonNode channel = document.get("measure").get("channels").get(0);
        assertThat(channel.get("lowLevel").get("value").isNull()).isTrue();
        assertThat(channel.get("meanVoltage").get("value").isNull()).isTrue();
        assertThat(run.status()).as(run.out()).isZero();
        assertThat(Run.of("measure", csv).out()).contains("signal1.coupling").contains("set it to DC");
    }
}
