// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.ScalarResult;

/**
 * Measures the processor time of all threads, compiler and collector included, and takes over how many bytes one
 * operation works through. On a machine that others use too, processor time says more than the clock.
 */
public final class CostProfiler implements InternalProfiler {
    /** Name of the result of processor time, milliseconds an operation. */
    static final String PROCESSOR = "processor";
    /** Name of the result of bytes an operation. */
    static final String BYTES = "bytes";

    private static long bytesAnOperation;
    private static boolean told;

    private long startNanos;

    /** Made by JMH. */
    public CostProfiler() {}

    /** To be called by the set-up of a benchmark: what one operation works through, 0 where bytes say nothing. */
    public static void operationBytes(long bytes) {
        bytesAnOperation = bytes;
        told = true;
    }

    @Override
    public String getDescription() {
        return "processor time and bytes of an operation";
    }

    @Override
    public void beforeIteration(BenchmarkParams benchmarkParams, IterationParams iterationParams) {
        startNanos = processorNanos();
    }

    @Override
    public Collection<? extends Result<?>> afterIteration(
            BenchmarkParams benchmarkParams, IterationParams iterationParams, IterationResult result) {
        double operations = Math.max(1, result.getMetadata().getMeasuredOps());
        double milliseconds = (processorNanos() - startNanos) / 1e6 / operations;
        ScalarResult processor = new ScalarResult(PROCESSOR, milliseconds, "ms/op", AggregationPolicy.AVG);
        return told
                ? List.of(processor, new ScalarResult(BYTES, bytesAnOperation, "B/op", AggregationPolicy.AVG))
                : List.of(processor);
    }

    private static long processorNanos() {
        return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
    }
}
