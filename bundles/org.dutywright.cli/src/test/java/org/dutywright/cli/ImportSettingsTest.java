// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A carrier of exactly 100 Hz at 10 kHz, high for 30 of 100 samples, 0.1 V and 4.9 V, in millivolts. */
final class ImportSettingsTest {
    @TempDir
    private Path folder;

    private Path csv = Path.of("");

    @BeforeEach
    void record() throws IOException {
        StringBuilder text = new StringBuilder("made by hand\nt [ms];pedal (mV);other (mV)\n");
        for (int i = 0; i < 2000; i++) {
            text.append(i / 10).append(',').append(i % 10).append(';');
            text.append(i % 100 < 30 ? 4900 : 100).append(";7\n");
        }
        csv = Files.writeString(folder.resolve("my.csv"), text);
    }

    @Test
    void whatWasGuessedIsSavedEditedAndUsedAgain() throws IOException {
        Path saved = folder.resolve("bench.yaml");
        Run first = Run.of("measure", csv, "--save-import-settings", saved, "--role", "pedal=pwm");

        assertThat(first.status()).isZero();
        assertThat(first.err()).contains("wrote how it was read to " + saved);
        assertThat(saved).hasContent("""
                schema: dutywright.import/1
                name: "Read from my.csv"
                format: csv
                table:
                  encoding: UTF-8
                  delimiter: semicolon
                  decimalMark: comma
                  headerLine: 2
                  unitsLine: none
                time: {column: "t [ms]", unit: ms}
                channels:
                  - {column: "pedal (mV)", name: pedal, unit: mV, role: pwm}
                  - {column: "other (mV)", name: other, unit: mV}
                """);
        assertThat(high(json("measure", csv, "--import-settings", saved), "pedal"))
                .isEqualTo(high(json("measure", csv), "pedal"));

        Files.writeString(
                saved,
                Files.readString(saved)
                        .replace("name: pedal, unit: mV", "name: signal1, unit: V, scale: 2")
                        .replace("  - {column: \"other (mV)\", name: other, unit: mV}\n", "")
                        .replace("unit: ms", "unit: us"));
        JsonNode edited = json("measure", csv, "--import-settings", saved);
        assertThat(edited.at("/channels")).hasSize(1);
        // 4900 of a volt, doubled; 10 kHz in ms are 10 MHz in us
        assertThat(high(edited, "signal1")).isEqualTo(9800);
        assertThat(edited.at("/capture/sampleRateHz").doubleValue()).isEqualTo(10e6);
        assertThat(edited.at("/capture/guessed/time unit").asText()).isEqualTo("us, as given");
        assertThat(edited.at("/settings/import/units/signal1").asText()).isEqualTo("V");
    }

    @Test
    void optionsWinOverTheText() throws IOException {
        Path saved = folder.resolve("bench.yaml");
        Run.of("measure", csv, "--save-import-settings", saved);
        JsonNode json = json(
                "measure",
                csv,
                "--import-settings",
                saved,
                "--time-column",
                "none",
                "--sample-rate",
                "2e4",
                "--channel",
                "other=o",
                "--channel",
                "pedal (mV)=p",
                "--unit",
                "p=V");

        assertThat(json.at("/capture/sampleRateHz").doubleValue()).isEqualTo(20_000);
        assertThat(json.at("/capture/guessed/time column").asText()).isEqualTo("none, as given");
        assertThat(json.at("/channels/0/name").asText()).isEqualTo("o");
        assertThat(high(json, "p")).isEqualTo(4900);
    }

    @Test
    void eachGuessCanBeSetByAnOption() throws IOException {
        Path odd = Files.writeString(folder.resolve("odd.txt"), "a;b\n7;8\n1,5;2\n2,5;3\n3,5;4\n");
        JsonNode json = json(
                "measure",
                odd,
                "--delimiter",
                ";",
                "--decimal-mark",
                "comma",
                "--header-line",
                "none",
                "--units-line",
                "none",
                "--first-line",
                "3",
                "--encoding",
                "iso-8859-1",
                "--time-column",
                "#1",
                "--time-unit",
                "ms",
                "--unit",
                "channel1=kV",
                "--format",
                "csv");

        assertThat(json.at("/capture/samples").longValue()).isEqualTo(3);
        assertThat(json.at("/capture/sampleRateHz").doubleValue()).isEqualTo(1000);
        assertThat(json.at("/capture/startS").doubleValue()).isEqualTo(1.5e-3);
        assertThat(json.at("/settings/import/units/channel1").asText()).isEqualTo("kV");
        assertThat(json.at("/capture/guessed/delimiter").asText()).isEqualTo("semicolon, as given");
    }

    @Test
    void aTextThatDoesNotFitTheFileIsOneLine() throws IOException {
        Path text = Files.writeString(
                folder.resolve("wrong.yaml"),
                "schema: dutywright.import/1\nname: Wrong\nchannels:\n  - {column: brake, name: signal1}\n");
        Run run = Run.of("measure", csv, "--import-settings", text);

        assertThat(run.status()).isEqualTo(64);
        assertThat(run.errors().getLast())
                .startsWith(
                        csv + ": there is no column 'brake'; its columns are pedal, other; that is said in " + text);
        Run time = Run.of("measure", csv, "--quiet", "--time-column", "clock");
        assertThat(time.status()).isEqualTo(64);
        assertThat(time.err())
                .startsWith(
                        csv + ": there is no column 'clock' of time; its columns are t [ms], pedal (mV), other (mV)")
                .hasLineCount(1);
        Run line = Run.of("measure", csv, "--quiet", "--delimiter", "tab");
        assertThat(line.status()).isEqualTo(64);
        assertThat(line.err())
                .contains("read as the settings say, it holds no table of numbers")
                .hasLineCount(1);
        Run scale = Run.of("measure", csv, "--quiet", "--full-scale", "5");
        assertThat(scale.status()).isEqualTo(64);
        assertThat(scale.err())
                .contains("has no use for settings of volts of full scale")
                .hasLineCount(1);
    }

    @Test
    void aWrongTextIs65WithAllItsProblemsAndAMissingOne66() throws IOException {
        Path text = Files.writeString(
                folder.resolve("wrong.yaml"), "schema: dutywright.import/1\nnam: Wrong\ntable: {delimter: tab}\n");
        Run run = Run.of("convert", csv, "--to", folder.resolve("a.npy"), "--import-settings", text);

        assertThat(run.status()).isEqualTo(65);
        assertThat(run.errors()).hasSize(3).allMatch(line -> line.startsWith(text + ":"));
        assertThat(run.err()).contains("did you mean 'delimiter'?");
        assertThat(Run.of("measure", csv, "--import-settings", folder.resolve("no.yaml"))
                        .status())
                .isEqualTo(66);
        assertThat(Run.of("measure", csv, "--save-import-settings", csv).status())
                .isEqualTo(64);
        assertThat(Run.of(
                                "measure",
                                csv,
                                "--save-import-settings",
                                folder.resolve("no").resolve("a.yaml"))
                        .status())
                .isEqualTo(73);
    }

    private static double high(JsonNode json, String channel) {
        for (JsonNode one : json.at("/channels")) {
            if (one.at("/name").asText().equals(channel)) {
                return one.at("/highLevel/value").doubleValue();
            }
        }
        throw new AssertionError("no channel " + channel);
    }

    private static JsonNode json(Object... words) throws IOException {
        Object[] all = java.util.Arrays.copyOf(words, words.length + 2);
        all[words.length] = "--json";
        all[words.length + 1] = "-";
        Run run = Run.of(all);
        assertThat(run.status()).as(run.err()).isZero();
        return new ObjectMapper().readTree(run.out());
    }
}
