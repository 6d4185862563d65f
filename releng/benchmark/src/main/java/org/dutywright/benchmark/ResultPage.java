// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.util.Statistics;

/** The table of one run as Markdown: machine, Java, heap, and for each benchmark its median. */
final class ResultPage {
    private static final double MILLI = 1e-3;
    private static final double MEGA = 1e6;

    private ResultPage() {}

    static String of(String name, Collection<RunResult> results) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("benchmark", "parameters", "ms", "best", "processor ms", "MB", "MB/s of processor"));
        for (RunResult result : results) {
            rows.add(row(result));
        }
        BenchmarkParams first = results.iterator().next().getParams();
        return "# " + name + "\n\n" + Machine.text(first) + "\n\n" + table(rows) + """

                `ms` is the median of wall-clock time of one operation, `best` its least; the clock of a shared machine moves, so
                compare inside one table only, and processor time rather than the clock. Processor time is that of all threads,
                compiler and collector included.
                """;
    }

    private static List<String> row(RunResult result) {
        BenchmarkParams params = result.getParams();
        Statistics wall = result.getPrimaryResult().getStatistics();
        double processor = secondary(result, CostProfiler.PROCESSOR);
        double bytes = secondary(result, CostProfiler.BYTES);
        String parameters = params.getParamsKeys().stream()
                .map(key -> key + "=" + params.getParam(key))
                .collect(Collectors.joining(", "));
        String benchmark = params.getBenchmark();
        return List.of(
                benchmark.substring(benchmark.lastIndexOf('.') + 1),
                parameters,
                number(wall.getPercentile(50)),
                number(wall.getMin()),
                number(processor),
                bytes > 0 ? number(bytes / MEGA) : "",
                bytes > 0 && processor > 0 ? number(bytes / MEGA / (processor * MILLI)) : "");
    }

    private static double secondary(RunResult result, String label) {
        Result<?> found = result.getSecondaryResults().get(label);
        return found == null ? 0 : found.getStatistics().getPercentile(50);
    }

    /** Three digits, never fewer than those before the point. */
    private static String number(double value) {
        int before = value < 1 ? 0 : (int) Math.log10(value) + 1;
        return String.format(Locale.ROOT, "%." + Math.max(0, 3 - before) + "f", value);
    }

    private static String table(List<List<String>> rows) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < rows.size(); i++) {
            text.append("| ").append(String.join(" | ", rows.get(i))).append(" |\n");
            if (i == 0) {
                text.append("|").append("---|".repeat(rows.get(0).size())).append("\n");
            }
        }
        return text.toString();
    }
}
