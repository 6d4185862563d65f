// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * What a process took, looked at until its end.
 *
 * @param exit its status
 * @param clockSeconds from start to end
 * @param processorSeconds of all its threads
 * @param peakBytes its largest resident set, 0 where the system does not tell
 */
record ProcessCost(int exit, double clockSeconds, double processorSeconds, long peakBytes) {
    private static final int LOOK_EACH_MILLISECONDS = 20;
    private static final double NANOS = 1e-9;

    /** Runs a command to its end; what it prints is thrown away, errors are shown. */
    static ProcessCost of(List<String> command) throws IOException, InterruptedException {
        long start = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectOutput(Redirect.DISCARD)
                .redirectError(Redirect.INHERIT)
                .start();
        Path status = Path.of("/proc", Long.toString(process.pid()), "status");
        Duration processor = Duration.ZERO;
        long peak = 0;
        do {
            processor = process.info().totalCpuDuration().orElse(processor);
            peak = Math.max(peak, peakBytes(status));
        } while (!process.waitFor(LOOK_EACH_MILLISECONDS, TimeUnit.MILLISECONDS));
        double clock = (System.nanoTime() - start) * NANOS;
        return new ProcessCost(process.exitValue(), clock, processor.toNanos() * NANOS, peak);
    }

    private static long peakBytes(Path status) {
        try {
            return Files.readAllLines(status).stream()
                    .filter(line -> line.startsWith("VmHWM:"))
                    .mapToLong(line -> 1024 * Long.parseLong(line.replaceAll("\\D", "")))
                    .findFirst()
                    .orElse(0);
        } catch (IOException e) {
            // it has ended, or the system has no such file
            return 0;
        }
    }
}
