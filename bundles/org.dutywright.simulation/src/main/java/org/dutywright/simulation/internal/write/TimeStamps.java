// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.write;

import java.math.BigDecimal;
import java.util.Optional;
import org.dutywright.simulation.Recording;

/**
 * The instants of a recording as whole multiples of a power of ten: exact where the step is a short decimal number
 * (10 µs), else to a thousandth of a step.
 */
final class TimeStamps {

    private static final int MAX_EXACT_DECIMALS = 12;

    private record Exact(long start, long step) {}

    private final Recording recording;
    private final double unitsPerSecond;
    private final int decimals;
    private final Optional<Exact> exact;

    private TimeStamps(Recording recording, double unitsPerSecond, int decimals, Optional<Exact> exact) {
        this.recording = recording;
        this.unitsPerSecond = unitsPerSecond;
        this.decimals = decimals;
        this.exact = exact;
    }

    static TimeStamps of(Recording recording) {
        double unitsPerSecond = switch (recording.format().timeUnit()) {
            case "s" -> 1;
            case "ms" -> 1e3;
            case "us" -> 1e6;
            default ->
                throw new IllegalArgumentException(
                        "no unit of time: " + recording.format().timeUnit());
        };
        return exactly(recording, unitsPerSecond).orElseGet(() -> closely(recording, unitsPerSecond));
    }

    private static Optional<TimeStamps> exactly(Recording recording, double unitsPerSecond) {
        try {
            BigDecimal units = BigDecimal.valueOf(unitsPerSecond);
            BigDecimal step =
                    units.divide(BigDecimal.valueOf(recording.sampleRateHz())).stripTrailingZeros();
            BigDecimal start =
                    units.multiply(BigDecimal.valueOf(recording.startSeconds())).stripTrailingZeros();
            int decimals = Math.max(0, Math.max(step.scale(), start.scale()));
            if (decimals > MAX_EXACT_DECIMALS) {
                return Optional.empty();
            }
            Exact exact = new Exact(
                    start.movePointRight(decimals).longValueExact(),
                    step.movePointRight(decimals).longValueExact());
            // Throws where the last instant does not fit.
            Math.addExact(exact.start(), Math.multiplyExact(exact.step(), recording.instants()));
            return Optional.of(new TimeStamps(recording, unitsPerSecond, decimals, Optional.of(exact)));
        } catch (ArithmeticException e) {
            // No finite decimal number, or too long a one: print it rounded.
            return Optional.empty();
        }
    }

    private static TimeStamps closely(Recording recording, double unitsPerSecond) {
        double thousandth = unitsPerSecond / recording.sampleRateHz() / 1000;
        int decimals = Math.max(0, (int) Math.ceil(-Math.log10(thousandth)));
        return new TimeStamps(recording, unitsPerSecond, decimals, Optional.empty());
    }

    /** Decimals that the stamps are printed with. */
    int decimals() {
        return decimals;
    }

    /** Stamp of a sample instant in units of its last decimal. */
    long scaled(long instant) {
        if (exact.isPresent()) {
            return exact.get().start() + instant * exact.get().step();
        }
        return Math.round(recording.secondsAt(instant) * unitsPerSecond * Math.pow(10, decimals));
    }
}
