// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class ConvertTest {
    @TempDir
    private Path folder;

    private Path csv = Path.of("");

    @BeforeEach
    void simulate() throws IOException {
        csv = Texts.simulate(folder, "pedal", Texts.HEALTHY);
    }

    @ParameterizedTest
    @ValueSource(strings = {"a.arrow", "a.csv"})
    void whatWasConvertedMeasuresTheSame(String name) throws IOException {
        Path converted = folder.resolve(name);
        Run run = Run.of("convert", csv, "--to", converted);

        assertThat(run.status()).isZero();
        assertThat(run.out()).isEmpty();
        assertThat(run.errors().getLast()).isEqualTo("wrote " + converted + ": 25000 samples of signal1, signal2");
        JsonNode before = measured(csv);
        JsonNode after = measured(converted);
        assertThat(after.at("/capture/sampleRateHz")).isEqualTo(before.at("/capture/sampleRateHz"));
        // every digit that was recorded is kept, so cycles and events are the same
        assertThat(after.at("/channels/0/frequencyHz")).isEqualTo(before.at("/channels/0/frequencyHz"));
        assertThat(after.at("/channels/1/dutyPercent")).isEqualTo(before.at("/channels/1/dutyPercent"));
    }

    @Test
    void aStoreNamesItsSource() throws IOException {
        Path store = folder.resolve("a.arrow");
        Run.of("convert", csv, "--to", store, "--scale", "signal1=2");

        JsonNode guessed = measured(store).at("/capture/guessed");
        assertThat(guessed.get("import: source").asText()).endsWith(" " + csv).matches("[0-9a-f]{64} .*");
        assertThat(guessed.get("import: --scale").asText()).isEqualTo("signal1=2");
        assertThat(guessed.get("import: delimiter").asText()).isEqualTo("comma");
    }

    @Test
    void aPartAndAChannelCanBePicked() throws IOException {
        Path part = folder.resolve("part.csv");
        Run run = Run.of("convert", csv, "--to", part, "--from", "0.1", "--until", "0.2", "--channel", "signal2=other");

        assertThat(run.status()).isZero();
        assertThat(Files.readAllLines(part)).startsWith("time (s),other (V)").hasSize(1 + 5001);
        assertThat(Files.readAllLines(part).get(1)).startsWith("0.1,");
        assertThat(Files.readAllLines(part).getLast()).startsWith("0.2,");
    }

    @Test
    void aWaveTellsItsScale() {
        Run run = Run.of("convert", csv, "--to", folder.resolve("a.wav"));

        assertThat(run.status()).isZero();
        assertThat(run.err())
                .containsPattern("16 bits a sample; signal1: full scale 12\\.\\d V, signal2: full scale 12");
    }

    @Test
    void anUnknownEndingIsWrongUsageThatNamesThoseThatAre() {
        Run run = Run.of("convert", csv, "--to", folder.resolve("a.xyz"));

        assertThat(run.status()).isEqualTo(64);
        assertThat(run.err())
                .contains("its ending names no format; end it in .arrow, .csv, .wav, .npy")
                .hasLineCount(1);
    }

    @Test
    void anOutputThatCannotBeIs73AndOneThatIsTheInput64() {
        assertThat(Run.of("convert", csv, "--to", folder.resolve("none").resolve("a.npy"))
                        .status())
                .isEqualTo(73);
        assertThat(Run.of("convert", csv, "--to", csv).status()).isEqualTo(64);
        assertThat(Run.of("convert", csv).status()).isEqualTo(64);
        assertThat(Run.of("convert", folder.resolve("none.csv"), "--to", folder.resolve("a.npy"))
                        .status())
                .isEqualTo(66);
    }

    @Test
    void aDamagedStoreIs65WithFileAndByte() throws IOException {
        Path store = folder.resolve("a.arrow");
        Run.of("convert", csv, "--to", store);
        byte[] bytes = Files.readAllBytes(store);
        Files.write(store, Arrays.copyOf(bytes, bytes.length - 1));

        Run run = Run.of("convert", store, "--to", folder.resolve("b.csv"));
        assertThat(run.status()).isEqualTo(65);
        assertThat(run.err())
                .startsWith(store + ", byte " + (bytes.length - 1) + ": ")
                .hasLineCount(1);
        assertThat(folder.resolve("b.csv")).doesNotExist();
    }

    @Test
    void aCancelledRunLeavesTheOldFile() throws IOException {
        Path old = Files.writeString(folder.resolve("old.arrow"), "old");
        Cancellation cancellation = new Cancellation();
        cancellation.ask();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        String[] args = {"convert", csv.toString(), "--to", old.toString()};
        int status = Main.run(
                args,
                Run.stream(new ByteArrayOutputStream()),
                Run.stream(err),
                cancellation,
                false,
                ErrorLog.ofUser(Map.of("XDG_STATE_HOME", folder.toString())));

        assertThat(status).isEqualTo(130);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("cancelled");
        assertThat(old).hasContent("old");
        assertThat(folder).isDirectoryNotContaining("glob:**.part");
    }

    private JsonNode measured(Path file) throws IOException {
        Run run = Run.of("measure", file, "--json", "-");
        assertThat(run.status()).isZero();
        return new ObjectMapper().readTree(run.out());
    }
}
