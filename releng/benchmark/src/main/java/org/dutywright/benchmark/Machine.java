// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.openjdk.jmh.infra.BenchmarkParams;

/** What a figure was measured on, without a word that tells whose machine it is. */
public final class Machine {
    private static final Path PROCESSORS = Path.of("/proc/cpuinfo");
    private static final double GIBI = 1L << 30;

    private Machine() {}

    static String text(BenchmarkParams params) {
        String options = String.join(
                " ",
                params.getJvmArgs().stream().filter(it -> it.startsWith("-X")).toList());
        return hardware() + "; " + params.getVmName() + " " + params.getVmVersion() + ", options "
                + (options.isEmpty() ? "none" : options) + "; " + params.getForks() + " starts of it, "
                + params.getWarmup().getCount() + " iterations discarded and "
                + params.getMeasurement().getCount() + " counted in each.";
    }

    /** Processor, number of threads, memory, and system. */
    public static String hardware() {
        OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        return processor() + ", " + system.getAvailableProcessors() + " threads, "
                + String.format(Locale.ROOT, "%.0f GiB", system.getTotalMemorySize() / GIBI) + ", "
                + System.getProperty("os.name") + " " + System.getProperty("os.version");
    }

    private static String processor() {
        if (!Files.isReadable(PROCESSORS)) {
            return System.getProperty("os.arch");
        }
        try {
            List<String> lines = Files.readAllLines(PROCESSORS);
            return lines.stream()
                    .filter(line -> line.startsWith("model name"))
                    .map(line -> line.substring(line.indexOf(':') + 1).strip())
                    .findFirst()
                    .orElse(System.getProperty("os.arch"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
