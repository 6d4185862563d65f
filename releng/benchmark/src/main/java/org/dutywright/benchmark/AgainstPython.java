// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;

/** Reads one text table with this program and with what Python has, whole processes in turn, and tells the ratios. */
public final class AgainstPython {
    private static final int ARGUMENTS = 5;
    private static final String PANDAS = "import pandas,sys; pandas.read_csv(sys.argv[1], engine='c')";
    private static final String NUMPY = "import numpy,sys; numpy.loadtxt(sys.argv[1], delimiter=',', skiprows=1)";
    private static final String VERSIONS = "import sys; m=__import__(sys.argv[1]); print(m.__name__, m.__version__)";

    private AgainstPython() {}

    /** File of the results, folder to work in, Python, rows, rounds; or a file to read. */
    public static void main(String[] arguments) throws IOException, InterruptedException, UnreadableException {
        if (arguments.length == 1) {
            read(Path.of(arguments[0]));
            return;
        }
        if (arguments.length != ARGUMENTS) {
            throw new IllegalArgumentException("give a file, a folder, a Python, rows and rounds");
        }
        int rows = Integer.parseInt(arguments[3]);
        Path folder = Files.createDirectories(Path.of(arguments[1]));
        Path table = folder.resolve("table.csv");
        try (var stream = new java.io.BufferedOutputStream(Files.newOutputStream(table), 1 << 18)) {
            TextTable.write(rows, stream);
        }
        try {
            String page = page(table, arguments[2], Integer.parseInt(arguments[4]));
            System.out.println(page);
            Files.writeString(Path.of(arguments[0]), page);
        } finally {
            Files.delete(table);
        }
    }

    private static void read(Path table) throws IOException, UnreadableException {
        ReadSettings settings = new ReadSettings(OptionalDouble.empty(), List.of(), Map.of());
        try (Capture capture = Captures.open(List.of(table), settings, Progress.NONE)) {
            System.out.println(capture.sampleCount());
        }
    }

    private static String page(Path table, String python, int rounds) throws IOException, InterruptedException {
        Map<String, List<String>> commands = new TreeMap<>();
        String file = table.toString();
        commands.put("0 this program", ours("-XX:ActiveProcessorCount=2", file));
        commands.put("1 this program, one processor", ours("-XX:ActiveProcessorCount=1", file));
        for (String library : List.of("pandas", "numpy")) {
            if (ProcessCost.of(List.of(python, "-c", VERSIONS, library)).exit() == 0) {
                String program = library.equals("pandas") ? PANDAS : NUMPY;
                commands.put("2 " + program.replaceAll(".*; ", ""), List.of(python, "-c", program, file));
            }
        }
        Map<String, double[]> clock = new TreeMap<>();
        Map<String, double[]> processor = new TreeMap<>();
        for (int round = 0; round < rounds; round++) {
            for (Map.Entry<String, List<String>> command : commands.entrySet()) {
                ProcessCost cost = ProcessCost.of(command.getValue());
                if (cost.exit() != 0) {
                    throw new IllegalStateException(command.getKey() + " ended with " + cost.exit());
                }
                clock.computeIfAbsent(command.getKey(), key -> new double[rounds])[round] = cost.clockSeconds();
                processor.computeIfAbsent(command.getKey(), key -> new double[rounds])[round] = cost.processorSeconds();
            }
        }
        return text(Files.size(table), rounds, clock, processor);
    }

    private static List<String> ours(String option, String file) {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        String path = System.getProperty("java.class.path");
        return List.of(java, "-Xmx1g", option, "-cp", path, AgainstPython.class.getName(), file);
    }

    private static String text(long bytes, int rounds, Map<String, double[]> clock, Map<String, double[]> processor) {
        StringBuilder rows = new StringBuilder();
        double ourClock = 0;
        double ourProcessor = 0;
        for (String name : clock.keySet()) {
            double seconds = median(clock.get(name));
            double busy = median(processor.get(name));
            ourClock = ourClock == 0 ? seconds : ourClock;
            ourProcessor = ourProcessor == 0 ? busy : ourProcessor;
            rows.append(String.format(
                    Locale.ROOT,
                    "| %s | %.2f | %.2f | %.1f | %.1f |%n",
                    name.substring(2),
                    seconds,
                    busy,
                    seconds / ourClock,
                    busy / ourProcessor));
        }
        return "# A text table, against Python\n\n" + Machine.hardware() + "; " + System.getProperty("java.vm.name")
                + " "
                + System.getProperty("java.vm.version") + ", -Xmx1g. " + bytes / 1_000_000
                + " MB of a time column and two channels, medians of " + rounds + " processes each, in turn.\n\n"
                + "| what | clock s | processor s | clock ratio | processor ratio |\n|---|---|---|---|---|\n" + rows
                + """

                Ours starts a Java machine, finds the layout and the time base, computes the SHA-256, sums up blocks for drawing and
                puts the values into a temporary file; the others make an array in memory. `bash releng/benchmark/against-python`
                repeats it.
                """;
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
