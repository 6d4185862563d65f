// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The oracle looks at each line as if it held anything; the fast way must give the same, errors and remarks included. */
class CleanRowsTest {
    private static final int TRIALS = 1500;
    private static final String[] ODD_CELLS = {
        "", "nan", "-", "1e5", "2.5E-3", " 7", "8 ", "0.30000000000000004", "9.91e37", "+4", ".5", "6.", "1e400", "-0"
    };
    private static final String[] ODD_LINES = {"", "# said", "  ", "1", "9.9,,", "\f"};

    @TempDir
    Path folder;

    private String outcome(Path file, FastRows.Pace pace, ReadSettings settings) throws IOException {
        StringBuilder text = new StringBuilder();
        try (Capture capture =
                new CsvCaptureReader(pace, CaptureBuilder.HEAP_VALUES).read(file, settings, Progress.NONE)) {
            text.append(capture.channels()).append(capture.guessed()).append(capture.sources());
            text.append(Arrays.toString(CsvText.secondsOf(capture)));
            for (int channel = 0; channel < capture.channels().size(); channel++) {
                text.append(Arrays.toString(CsvText.valuesOf(capture, channel)));
            }
        } catch (UnreadableException e) {
            text.append("refused: ").append(e.getMessage());
        }
        return text.toString();
    }

    @Test
    void gives_what_a_look_at_each_line_gives() throws IOException {
        Random random = new Random(20261125);
        int refused = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            Path file = Files.write(folder.resolve("table.csv"), table(random));
            ReadSettings settings = random.nextInt(3) == 0 ? CsvText.AT_1_KHZ : ReadSettings.none();
            String expected = outcome(file, new FastRows.Pace(1 << 20, 0, true), settings);
            assertThat(outcome(file, new FastRows.Pace(1 << 20, 0, false), settings))
                    .as("trial " + trial)
                    .isEqualTo(expected);
            assertThat(outcome(file, new FastRows.Pace(200, 2, false), settings))
                    .as("trial " + trial + ", by three threads")
                    .isEqualTo(expected);
            refused += expected.startsWith("refused") ? 1 : 0;
        }
        assertThat(refused).isBetween(TRIALS / 20, TRIALS / 2);
    }

    private static byte[] table(Random random) {
        String delimiter = new String[] {",", ";", "\t", " ", "  ", ", "}[random.nextInt(6)];
        String lineEnd = new String[] {"\n", "\n", "\r\n", "\r"}[random.nextInt(4)];
        int columns = 1 + random.nextInt(4);
        boolean stamped = random.nextInt(3) > 0;
        boolean comma = delimiter.equals(";") && random.nextBoolean();
        boolean exponents = random.nextInt(5) == 0;
        StringBuilder text = new StringBuilder(random.nextBoolean() ? "made by hand" + lineEnd : "");
        text.append(stamped ? "t" + delimiter : "");
        for (int i = 0; i < columns; i++) {
            text.append(i > 0 ? delimiter : "").append("s").append(i).append(random.nextInt(5) == 0 ? "/mV" : "");
        }
        text.append(lineEnd);
        int rows = 3 + random.nextInt(120);
        for (int row = 0; row < rows; row++) {
            StringBuilder line = new StringBuilder();
            line.append(stamped ? number(row * 0.25, exponents) + delimiter : "");
            for (int i = 0; i < columns; i++) {
                line.append(i > 0 ? delimiter : "").append(cell(random, exponents));
            }
            String whole = comma ? line.toString().replace('.', ',') : line.toString();
            text.append(random.nextInt(400) == 0 ? ODD_LINES[random.nextInt(ODD_LINES.length)] : whole);
            text.append(random.nextInt(300) == 0 ? delimiter : "");
            text.append(row + 1 < rows || random.nextBoolean() ? lineEnd : "");
        }
        byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
        if (random.nextInt(4) == 0) {
            bytes[random.nextInt(bytes.length)] = (byte) "09.,;- x\"\0#\r\n".charAt(random.nextInt(13));
        }
        return random.nextInt(8) == 0 ? Arrays.copyOf(bytes, 1 + random.nextInt(bytes.length)) : bytes;
    }

    private static String cell(Random random, boolean exponents) {
        return random.nextInt(300) == 0
                ? ODD_CELLS[random.nextInt(ODD_CELLS.length)]
                : number(random.nextInt(100_000) / 1e3 - 20, exponents);
    }

    private static String number(double value, boolean exponent) {
        return exponent ? String.format(java.util.Locale.ROOT, "%.5e", value) : Double.toString(value);
    }
}
