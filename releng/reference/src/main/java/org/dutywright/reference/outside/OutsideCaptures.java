// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.outside;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.dutywright.capture.Capture;
import org.dutywright.capture.OutputFile;
import org.dutywright.capture.Progress;
import org.dutywright.simulation.Scenario;
import org.dutywright.simulation.Simulator;
import org.dutywright.text.ProblemsException;

/** Writes the captures: equal bytes on every machine, as equal scenarios give equal captures. */
public final class OutsideCaptures {
    /** All captures. */
    static final List<String> NAMES =
            List.of("plain", "slow-edges", "codes", "active-low", "narrow", "pull-up", "uneven");

    private static final String UNEVEN = "uneven";
    private static final int LEAST_STEP = 7;
    private static final int STEPS = 7;

    private OutsideCaptures() {}

    /**
     * Writes them all.
     *
     * @param arguments the folder, made where it is missing
     */
    public static void main(String[] arguments) throws IOException, ProblemsException {
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        for (String name : NAMES) {
            write(name, folder.resolve(name + ".csv"));
        }
    }

    /** Writes one. */
    static void write(String name, Path csv) throws IOException, ProblemsException {
        Scenario scenario = scenario(name);
        if (name.equals(UNEVEN)) {
            OutputFile.write(csv, stream -> stream.write(uneven(scenario).getBytes(StandardCharsets.US_ASCII)));
        } else {
            Simulator.write(scenario, csv, Progress.NONE);
        }
    }

    /** Its scenario. */
    static Scenario scenario(String name) throws IOException, ProblemsException {
        String file = name + ".yaml";
        try (InputStream stream = OutsideCaptures.class.getResourceAsStream(file)) {
            return Scenario.parse(file, new String(stream.readAllBytes(), StandardCharsets.UTF_8));
        }
    }

    /** Every seventh to thirteenth sample of a fast recording, with its instant. */
    private static String uneven(Scenario scenario) throws IOException {
        StringBuilder text = new StringBuilder("time (s),signal1 (V)\n");
        try (Capture capture = Simulator.capture(scenario)) {
            double[] values = new double[Math.toIntExact(capture.sampleCount())];
            capture.samples().read(0, 0, values, 0, values.length);
            long random = 1;
            for (int i = 0; i < values.length; ) {
                text.append(String.format(
                        Locale.ROOT, "%.6f,%.4f%n", i / scenario.recording().sampleRateHz(), values[i]));
                // the generator of POSIX.1, rand()
                random = (random * 1103515245 + 12345) & 0x7fffffff;
                i += LEAST_STEP + (int) ((random >>> 16) % STEPS);
            }
        }
        return text.toString().replace("\r\n", "\n");
    }
}
