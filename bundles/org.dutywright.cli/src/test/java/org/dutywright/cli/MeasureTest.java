// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code measure} on a simulated capture: 0.5 s at 50 kHz, carriers of 200 Hz and 201 Hz. */
final class MeasureTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    private Path folder;

    private Path csv;

    @BeforeEach
    void simulate() throws IOException {
        csv = Texts.simulate(folder, "yard", Texts.HEALTHY);
    }

    @Test
    void peopleGetAlignedTextOnStandardOutput() {
        Run run = Run.of("measure", csv);
        assertThat(run.status()).isZero();
        assertThat(run.lines().get(0)).startsWith("recording  ").endsWith("yard.csv");
        assertThat(run.out())
                .contains("signal1: pwm, active high, ")
                .contains("signal2: pwm")
                .contains(" Hz");
    }

    @Test
    void whatTheReaderGuessedGoesToStandardErrorAndQuietKeepsItOut() {
        assertThat(Run.of("measure", csv).errors()).isNotEmpty().allMatch(line -> line.startsWith("guessed "));
        Run quiet = Run.of("measure", csv, "--quiet");
        assertThat(quiet.err()).isEmpty();
        assertThat(quiet.out()).contains("signal1: pwm");
    }

    @Test
    void statedErrorsOfTheRecorderWidenTheVoltagesOnly() throws IOException {
        JsonNode plain = MAPPER.readTree(Run.of("measure", csv, "--json", "-").out());
        JsonNode stated =
                MAPPER.readTree(Run.of("measure", csv, "--json", "-", "--gain-error", "1", "--offset-error", "0.05")
                        .out());
        assertThat(plain.get("settings").get("voltageUncertaintyCovers").asText())
                .isEqualTo("reading only");
        JsonNode high = stated.get("channels").get(0).get("highLevel");
        // two rectangles of half-widths 1 % of the level and 50 mV; the reading itself adds less than 1 % to their root
        double instrument = Math.hypot(0.01 * high.get("value").asDouble(), 0.05) / Math.sqrt(3);
        assertThat(high.get("u").asDouble()).isCloseTo(instrument, within(0.01 * instrument));
        assertThat(high.get("budget").toString())
                .contains("gain of the recorder")
                .contains("offset of the recorder");
        assertThat(stated.get("channels").get(0).get("dutyPercent"))
                .isEqualTo(plain.get("channels").get(0).get("dutyPercent"));
        assertThat(Run.of("measure", csv, "--gain-error", "-1").status()).isEqualTo(64);
    }

    @Test
    void jitterSaysWhatItsUncertaintyIsMadeOf() throws IOException {
        Run text = Run.of("measure", csv);
        JsonNode jitter = MAPPER.readTree(Run.of("measure", csv, "--json", "-").out())
                .get("channels")
                .get(0)
                .get("periodJitterS");
        for (String name : List.of("rms", "peakToPeak")) {
            JsonNode budget = jitter.get(name + "Budget");
            double squares = 0;
            for (JsonNode component : budget) {
                assertThat(component.get("name").asText()).isNotEmpty();
                assertThat(component.get("distribution").asText()).isNotEmpty();
                squares += Math.pow(component.get("u").asDouble(), 2);
            }
            // the parts are independent, JCGM 100, 5.1.2; sums of doubles agree to rounding
            double u = jitter.get(name + "U").asDouble();
            assertThat(Math.sqrt(squares))
                    .as(name)
                    .isCloseTo(u, within(1e-9 * u))
                    .isPositive();
        }
        assertThat(text.lines())
                .anyMatch(line -> line.contains("Period jitter, RMS") && line.contains("u mostly from"));
    }

    @Test
    void jsonOnStandardOutputIsAlone() throws IOException {
        Run run = Run.of("measure", csv, "--json", "-");
        assertThat(run.status()).isZero();
        JsonNode document = MAPPER.readTree(run.out());
        assertThat(document.get("schema").asText()).isEqualTo("dutywright.measure/1");
        assertThat(run.out()).startsWith("{").endsWith("}\n").doesNotContain("NaN");
        JsonNode signal1 = document.get("channels").get(0);
        // the scenario's carrier; its jitter and noise shift the mean of 100 cycles by far less than 0.1 %
        assertThat(signal1.get("frequencyHz").get("mean").asDouble()).isCloseTo(200, within(0.2));
        assertThat(document.get("capture").get("samples").asLong()).isEqualTo(25_000);
        assertThat(document.get("capture").get("sampleRateHz").asDouble()).isEqualTo(50_000);
        assertThat(document.get("capture").get("durationS").asDouble()).isEqualTo(0.5);
    }

    @Test
    void jsonInAFileIsTheSameAndTheTextStays() throws IOException {
        Path json = folder.resolve("out.json");
        Run run = Run.of("measure", csv, "--json", json);
        assertThat(run.out()).contains("signal1: pwm");
        assertThat(Files.readString(json))
                .isEqualTo(Run.of("measure", csv, "--json", "-").out());
    }

    @Test
    void theTableOfCyclesHasARowForEach() throws IOException {
        Path cycles = folder.resolve("cycles.csv");
        Run run = Run.of("measure", csv, "--cycles", cycles, "--json", "-");
        List<String> rows = Files.readAllLines(cycles);
        JsonNode channels = MAPPER.readTree(run.out()).get("channels");
        long all = channels.get(0).get("cycles").asLong()
                + channels.get(1).get("cycles").asLong();
        assertThat(rows.get(0))
                .isEqualTo(
                        "channel,index,start_s,period_s,frequency_hz,pulse_duration_s,duty_percent,mean_v,disturbed");
        assertThat(rows).hasSize((int) all + 1);
        // 0.5 s hold 100 periods of 200 Hz, of which the first and the last are not whole
        assertThat(channels.get(0).get("cycles").asLong()).isBetween(98L, 100L);
    }

    @Test
    void whatWasSaidStandsInTheSettings() throws IOException {
        Run run = Run.of(
                "measure",
                csv,
                "--json",
                "-",
                "--role",
                "signal2=level",
                "--active",
                "signal1=low",
                "--from",
                "0.1",
                "--to",
                "0.3",
                "--time-base-ppm",
                "20",
                "--setting",
                "reference.lower=20 %",
                "--scale",
                "signal1=2");
        assertThat(run.status()).as(run.err()).isZero();
        JsonNode document = MAPPER.readTree(run.out());
        JsonNode settings = document.get("settings");
        assertThat(settings.get("roles").toString()).isEqualTo("{\"signal2\":\"level\"}");
        assertThat(settings.get("activeLevels").toString()).isEqualTo("{\"signal1\":\"low\"}");
        assertThat(settings.get("fromS").asDouble()).isEqualTo(0.1);
        assertThat(settings.get("toS").asDouble()).isEqualTo(0.3);
        assertThat(settings.get("timeBasePpm").asDouble()).isEqualTo(20);
        assertThat(settings.get("measuring").get("reference.lower").toString())
                .isEqualTo("{\"value\":20.0,\"unit\":\"%\",\"changed\":true}");
        assertThat(settings.get("measuring").get("instrument.time-base").toString())
                .isEqualTo("{\"value\":20.0,\"unit\":\"ppm\",\"changed\":true}");
        assertThat(settings.get("measuring").get("reference.upper").toString())
                .isEqualTo("{\"value\":90.0,\"unit\":\"%\",\"changed\":false}");
        assertThat(document.get("capture").get("startS").asDouble()).isEqualTo(0.1);
        JsonNode signal1 = document.get("channels").get(0);
        assertThat(signal1.get("activeLevel").asText()).isEqualTo("low");
        // the scenario's high level of 12 V, times 2; noise of 10 mV
        assertThat(signal1.get("highLevel").get("value").asDouble()).isCloseTo(24, within(0.1));
        JsonNode signal2 = document.get("channels").get(1);
        assertThat(signal2.get("role").asText()).isEqualTo("level");
        assertThat(signal2.get("level").get("max").asDouble()).isCloseTo(12, within(0.2));
        assertThat(signal2.get("cycles").isNull()).isTrue();
    }

    @Test
    void aColumnIsPickedAndRenamed() throws IOException {
        Run run = Run.of("measure", csv, "--json", "-", "--channel", "#2=pedal");
        JsonNode channels = MAPPER.readTree(run.out()).get("channels");
        assertThat(channels.size()).isEqualTo(1);
        assertThat(channels.get(0).get("name").asText()).isEqualTo("pedal");
        assertThat(channels.get(0).get("frequencyHz").get("mean").asDouble()).isCloseTo(201, within(0.2));
    }

    @Test
    void aChannelThatIsNotThereIsWrongUsageThatListsThoseThatAre() {
        Run run = Run.of("measure", csv, "--role", "pedal=pwm");
        assertThat(run.status()).isEqualTo(64);
        assertThat(run.err())
                .contains("no channel is named pedal; there are signal1, signal2")
                .hasLineCount(1);
    }

    @Test
    void cyclesGoToAnArrowTableToo() throws IOException {
        Path cycles = folder.resolve("cycles.arrow");
        Run run = Run.of("measure", csv, "--cycles", cycles);
        assertThat(run.status()).isZero();
        assertThat(Files.readAllBytes(cycles)).startsWith("ARROW1".getBytes(StandardCharsets.US_ASCII));
    }

    @Test
    void aTableOfCyclesWithAnotherEndingIsRefusedBeforeAnythingIsWritten() {
        Path cycles = folder.resolve("cycles.txt");
        Run run = Run.of("measure", csv, "--cycles", cycles);
        assertThat(run.status()).isEqualTo(64);
        assertThat(run.err()).contains("ends in .csv or .arrow").hasLineCount(1);
        assertThat(run.out()).isEmpty();
        assertThat(cycles).doesNotExist();
    }

    @Test
    void anOlderOutputKeepsItsBytesWhenTheRunFails() throws IOException {
        Path json = Files.writeString(folder.resolve("old.json"), "old");
        Path bad = Files.writeString(folder.resolve("bad.csv"), "time (s),signal1 (V)\n0,1\n0.001,x\n0.002,1\n");
        Run run = Run.of("measure", bad, "--json", json);
        assertThat(run.status()).isEqualTo(65);
        assertThat(run.err()).contains("bad.csv, line 3").hasLineCount(1);
        assertThat(json).hasContent("old");
    }

    @Test
    void inputsThatAreNotThereAre66() {
        Run missing = Run.of("measure", csv, folder.resolve("none.csv"));
        assertThat(missing.status()).isEqualTo(66);
        assertThat(missing.err()).contains("none.csv: no such file").hasLineCount(1);
        Run aFolder = Run.of("measure", folder);
        assertThat(aFolder.status()).isEqualTo(66);
        assertThat(aFolder.err()).contains("is a folder").hasLineCount(1);
    }

    @Test
    void outputsThatCannotBeMadeAre73() {
        Run run = Run.of("measure", csv, "--json", folder.resolve("none").resolve("out.json"));
        assertThat(run.status()).isEqualTo(73);
        assertThat(run.err()).contains("folder does not exist").hasLineCount(1);
    }

    @Test
    void aTableOverItsInputIsRefused() {
        Run run = Run.of("measure", csv, "--cycles", csv);
        assertThat(run.status()).isEqualTo(64);
        assertThat(run.err()).contains("is also an input").hasLineCount(1);
    }

    @Test
    void whatTheFileDoesNotHaveIsWrongUsageThatSaysWhatItHas() {
        Run column = Run.of("measure", csv, "--channel", "pedal=signal1");
        assertThat(column.status()).isEqualTo(64);
        assertThat(column.err())
                .contains("no column 'pedal'; its columns are signal1, signal2")
                .hasLineCount(1);
        Run scale = Run.of("measure", csv, "--scale", "pedal=2");
        assertThat(scale.status()).isEqualTo(64);
        assertThat(scale.err()).contains("the channels are signal1, signal2").hasLineCount(1);
        Run part = Run.of("measure", csv, "--from", "100");
        assertThat(part.status()).isEqualTo(64);
        assertThat(part.err())
                .contains("no sample lies from 100.0 s; the recording runs from")
                .hasLineCount(1);
    }

    @Test
    void aResultThatNobodyCanReadIsAnOutputThatCannotBeMade() {
        OutputStream closed = new OutputStream() {
            @Override
            public void write(int value) throws IOException {
                throw new IOException("closed");
            }
        };
        for (String[] words :
                new String[][] {{"measure", csv.toString()}, {"measure", csv.toString(), "--json", "-"}}) {
            ByteArrayOutputStream err = new ByteArrayOutputStream();
            int status = Main.run(words, new PrintStream(closed, false, StandardCharsets.UTF_8), Run.stream(err));
            assertThat(status).isEqualTo(73);
            assertThat(err.toString(StandardCharsets.UTF_8)).contains("standard output: cannot be written");
        }
    }
}
