// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.dutywright.sensor.Catalogue;
import org.dutywright.simulation.DemoScenarios;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the README's tour shows is what the commands print; lines may be left out there, or end in an ellipsis. */
final class ReadmeTest {
    private static final String INDENT = "    ";

    @TempDir
    private Path folder;

    @Test
    void theDemonstrationPrintsAndExplainsWhatTheReadmeShows() throws IOException {
        DemoScenarios.Demo demo = DemoScenarios.all().stream()
                .filter(it -> it.name().equals("vehicle-05-missing-pulses"))
                .findFirst()
                .orElseThrow();
        Path csv = Texts.simulate(folder, demo.name(), demo.text());

        Run run = Run.of("check", csv, "--sensor", "twin-pedal-200");

        assertShown(run, blockAfter("bash releng/run work/demo/vehicle-05-missing-pulses.csv"));
    }

    @Test
    void aRecordingOfOnesOwnIsMeasuredAndConformsToASensorOfOnesOwn() throws IOException {
        Path csv = Files.writeString(folder.resolve("my.csv"), ownRecording());
        Path sensors = Files.createDirectory(folder.resolve("sensors"));
        Path sensor = Files.writeString(sensors.resolve("my-pedal.yaml"), ownSensor());

        Run measured = Run.of("measure", csv);
        Run valid = Run.of("catalogue", "validate", sensor);
        Run checked =
                Run.of("check", csv, "--catalogue", sensors, "--sensor", "my-pedal", "--channel", "pedal=signal1");

        assertShown(measured, blockAfter("bash releng/dutywright measure work/my.csv --cycles work/my-cycles.csv"));
        assertThat(valid.out()).endsWith("my-pedal.yaml: valid, sensor my-pedal\n");
        assertThat(checked.lines()).last().isEqualTo("verdict: conforms");
    }

    @Test
    void aMistakeInASensorTextIsToldAsTheReadmeShows() throws IOException {
        Path sensor =
                Files.writeString(folder.resolve("my-pedal.yaml"), ownSensor().replace("180 Hz", "5 ms"));

        Run run = Run.of("catalogue", "validate", sensor);

        String shown = lines().stream()
                .filter(line -> line.startsWith(INDENT + "work/sensors/my-pedal.yaml:11"))
                .findFirst()
                .orElseThrow();
        assertThat(run.err().strip()).endsWith(shown.strip().substring("work/sensors".length()));
    }

    @Test
    void theScenarioGivesTheFaultThatTheReadmeShows() throws IOException {
        List<String> lines = lines();
        int start = lines.indexOf(INDENT + "cat > work/loose-wire.yaml <<'END'");
        int end = lines.indexOf(INDENT + "END");
        String scenario = String.join(
                "\n",
                lines.subList(start + 1, end).stream()
                        .map(line -> line.substring(INDENT.length()))
                        .toList());
        Path csv = Texts.simulate(folder, "loose-wire", scenario);

        Run run = Run.of("check", csv, "--sensor", "twin-pedal-200");

        assertShown(run, blockAfter("bash releng/run work/loose-wire.csv"));
    }

    /** What the README's awk prints. */
    private static String ownRecording() {
        StringBuilder text = new StringBuilder("time (ms);pedal (mV)\n");
        for (int i = 0; i < 100_000; i++) {
            text.append(String.format(Locale.ROOT, "%.2f;%d%n", i / 50.0, i % 250.5 < 75 ? 4900 : 100));
        }
        return text.toString();
    }

    /** What the README's sed prints. */
    private static String ownSensor() {
        String builtIn =
                Catalogue.builtIn().find("single-throttle-500").orElseThrow().text();
        return builtIn.replaceAll("(?m)^id:.*", "id: my-pedal")
                .replace("min: 450 Hz, max: 550 Hz", "min: 180 Hz, max: 220 Hz");
    }

    private static void assertShown(Run run, List<String> shown) {
        List<String> printed = run.lines().stream().map(ReadmeTest::plain).toList();
        assertThat(shown)
                .isNotEmpty()
                .allSatisfy(line -> assertThat(printed)
                        .anyMatch(it -> line.endsWith("…")
                                ? it.startsWith(plain(line.replace("…", "")))
                                : it.equals(plain(line))));
    }

    /** Columns are aligned over all lines of a table, of which the README shows only some. */
    private static String plain(String line) {
        return line.strip().replaceAll("\\s+", " ");
    }

    /** The indented lines after the block that ends with a command. */
    private static List<String> blockAfter(String command) throws IOException {
        List<String> lines = lines();
        int start = lines.indexOf(INDENT + command) + 2;
        assertThat(start).as(command).isGreaterThan(1);
        List<String> rest = lines.subList(start, lines.size());
        return rest.stream().takeWhile(line -> line.startsWith(INDENT)).toList();
    }

    private static List<String> lines() throws IOException {
        Path project = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(project.resolve("releng"))) {
            project = project.getParent();
        }
        return Files.readAllLines(project.resolve("README.md"));
    }
}
