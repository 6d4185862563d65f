// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Takes long captures through the command line in a small heap: imports and measures them, and tells what processor time
 * and how much memory the process took. Memory must not grow with the length.
 */
public final class LongRun {
    private static final double GIGA = 1e9;
    private static final double MEBI = 1 << 20;
    private static final int ARGUMENTS = 4;

    private LongRun() {}

    /** File of the results, folder to work in, heap such as 1g, sizes in GB. */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        if (arguments.length < ARGUMENTS) {
            throw new IllegalArgumentException("give a file, a folder, a heap and sizes in GB");
        }
        String heap = arguments[2];
        Path folder = Files.createDirectories(Path.of(arguments[1]));
        List<String> rows = new ArrayList<>();
        for (String size : List.of(arguments).subList(ARGUMENTS - 1, arguments.length)) {
            rows.addAll(run(folder, heap, Double.parseDouble(size)));
        }
        String page = "# Long captures\n\n" + Machine.hardware() + "; " + System.getProperty("java.vm.name") + " "
                + System.getProperty("java.vm.version") + ", -Xmx" + heap + ", a process of its own for each row.\n\n"
                + "| GB | command | exit | clock s | processor s | peak MiB |\n|---|---|---|---|---|---|\n"
                + String.join("", rows) + """

                The capture is one channel of whole numbers of 16 bits as a NumPy array at 1 MS/s, a signal in every sixteenth
                piece and holes of the file between. Peak is the resident set, code and buffers included. The clock of a shared
                machine says little. `bash releng/benchmark/long GB...` repeats it, with any sizes.
                """;
        System.out.println(page);
        Files.writeString(Path.of(arguments[0]), page);
    }

    private static List<String> run(Path folder, String heap, double gigabytes)
            throws IOException, InterruptedException {
        Path array = folder.resolve("long.npy");
        Path store = folder.resolve("long.arrow");
        List<String> rows = new ArrayList<>();
        try {
            LongFile.write(array, (long) (gigabytes * GIGA));
            String rate = Integer.toString(LongFile.SAMPLE_RATE_HZ);
            rows.add(row(heap, gigabytes, "measure array", "measure", array.toString(), "--sample-rate", rate));
            boolean fits = Files.getFileStore(folder).getUsableSpace() > 2 * gigabytes * GIGA;
            if (fits) {
                String to = store.toString();
                rows.add(row(
                        heap,
                        gigabytes,
                        "convert to store",
                        "convert",
                        array.toString(),
                        "--sample-rate",
                        rate,
                        "--to",
                        to));
                rows.add(row(heap, gigabytes, "measure store", "measure", to));
            }
        } finally {
            Files.deleteIfExists(array);
            Files.deleteIfExists(store);
        }
        return rows;
    }

    private static String row(String heap, double gigabytes, String name, String... arguments)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx" + heap,
                "-cp",
                System.getProperty("java.class.path"),
                "org.dutywright.cli.Main"));
        command.addAll(List.of(arguments));
        ProcessCost cost = ProcessCost.of(command);
        String row = String.format(
                Locale.ROOT,
                "| %.3g | %s | %d | %.0f | %.1f | %.0f |%n",
                gigabytes,
                name,
                cost.exit(),
                cost.clockSeconds(),
                cost.processorSeconds(),
                cost.peakBytes() / MEBI);
        System.err.print(row);
        return row;
    }
}
