// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code check} on simulated captures against the demonstration sensor. */
final class CheckTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    private Path folder;

    private Path healthy() throws IOException {
        return Texts.simulate(folder, "healthy", Texts.HEALTHY);
    }

    private static String last(Run run) {
        return run.lines().get(run.lines().size() - 1);
    }

    @Test
    void aHealthyCaptureConformsWithStatus0() throws IOException {
        Run run = Run.of("check", healthy(), "--sensor", "twin-pedal-200", "--supply", "12");
        assertThat(last(run)).isEqualTo("verdict: conforms");
        assertThat(run.status()).isZero();
    }

    @Test
    void missingPulsesDoNotConformWithStatus1() throws IOException {
        Path csv = Texts.simulate(folder, "missing", Texts.MISSING_PULSES);
        Run run = Run.of("check", csv, "--sensor", "twin-pedal-200", "--supply", "12");
        assertThat(last(run)).startsWith("verdict: does not conform: signal1.events.missing-pulse (3, allowed 0)");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).contains("can hurt");
    }

    @Test
    void aChannelThatWasNotRecordedIsInconclusiveWithStatus2() throws IOException {
        Run run = Run.of("check", healthy(), "--sensor", "twin-pedal-200", "--channel", "#1=signal1");
        assertThat(last(run)).startsWith("verdict: inconclusive: signal2.signal");
        assertThat(run.status()).isEqualTo(2);
    }

    @Test
    void theJsonHoldsVerdictLinesAndTheMeasurement() throws IOException {
        Run run = Run.of(
                "check",
                healthy(),
                "--sensor",
                "twin-pedal-200",
                "--supply",
                "12",
                "--position",
                "released",
                "--json",
                "-");
        JsonNode document = MAPPER.readTree(run.out());
        assertThat(document.get("schema").asText()).isEqualTo("dutywright.check/1");
        assertThat(document.get("sensor").asText()).isEqualTo("twin-pedal-200");
        // the pedal is at 20 to 30 % of travel, not released as said
        assertThat(document.get("verdict").asText()).isEqualTo("does-not-conform");
        assertThat(run.status()).isEqualTo(1);
        assertThat(document.get("lines").findValuesAsText("item")).contains("signal1.duty.released", "signal2.signal");
        assertThat(document.get("measure").get("schema").asText()).isEqualTo("dutywright.measure/1");
        assertThat(document.get("measure").get("settings").get("position").asText())
                .isEqualTo("released");
        assertThat(run.out()).doesNotContain("NaN");
    }

    @Test
    void theWeightsOfTheSuspectsSumTo1() throws IOException {
        Path csv = Texts.simulate(folder, "missing", Texts.MISSING_PULSES);
        Run run = Run.of("check", csv, "--sensor", "twin-pedal-200", "--supply", "12", "--json", "-");
        double sum = 0;
        for (JsonNode suspect : MAPPER.readTree(run.out()).get("suspects")) {
            sum += suspect.get("weight").asDouble();
        }
        // weights are doubles: their sum may be off by a few units in the last place
        assertThat(sum).isCloseTo(1, org.assertj.core.api.Assertions.within(1e-9));
    }

    @Test
    void whatWasNotJudgedIsListedWithItsReason() throws IOException {
        Run run = Run.of("check", healthy(), "--sensor", "twin-pedal-200");
        assertThat(run.out())
                .contains("not judged\n")
                .contains("say so with --position")
                .contains("% of supply needs a supply channel or --supply");
    }

    @Test
    void anUnknownSensorIsWrongUsageThatNamesTheNearest() throws IOException {
        Run run = Run.of("check", healthy(), "--sensor", "twin-pedal-20");
        assertThat(run.status()).isEqualTo(64);
        assertThat(run.err())
                .contains("did you mean 'twin-pedal-200'?")
                .contains("catalogue list")
                .hasLineCount(1);
    }

    @Test
    void aSensorOfTheUsersOwnFolderIsFound() throws IOException {
        Path texts = Files.createDirectory(folder.resolve("texts"));
        String text = Run.of("catalogue", "show", "twin-pedal-200").out();
        Files.writeString(texts.resolve("yard.yaml"), text.replace("id: twin-pedal-200", "id: yard"));
        Run run = Run.of("check", healthy(), "--sensor", "yard", "--supply", "12", "--catalogue", texts);
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.lines().get(0)).startsWith("sensor").contains("yard: ");
    }

    @Test
    void problemsOfTheTextThatMayHoldTheSensorAreShown() throws IOException {
        Path texts = Files.createDirectory(folder.resolve("texts"));
        Path broken = Files.writeString(texts.resolve("yard.yaml"), "schema: dutywright.sensor/1\nid: yard\n");
        Run run = Run.of("check", healthy(), "--sensor", "yard", "--catalogue", texts);
        assertThat(run.status()).isEqualTo(65);
        assertThat(run.errors()).isNotEmpty().allMatch(line -> line.startsWith(broken + ":"));
    }
}
