// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

/**
 * Whether the samples come in pairs of the smallest and the largest value of a stretch of time, as a recording that was
 * reduced for a screen does. Within all pairs the signal then goes the same way, and often back at once: noise of samples
 * that were not reduced goes either way, and the edges of a clean signal do not go back at once.
 */
final class MinMaxPairs {
    private static final int LEAST_PAIRS = 50;
    private static final double MOST_OTHERS = 0.02;
    private static final double LEAST_TURNED = 0.3;

    private long pairs;
    private long others;
    private long turned;

    private MinMaxPairs() {}

    /** Whether they do. */
    static boolean in(SampleWindows windows) {
        MinMaxPairs sum = new MinMaxPairs();
        for (int window = 0; window < windows.count(); window++) {
            sum.add(best(windows.values(), windows.from(window), windows.to(window)));
        }
        return sum.pairs >= LEAST_PAIRS
                && sum.others <= MOST_OTHERS * sum.pairs
                && sum.turned >= LEAST_TURNED * sum.pairs;
    }

    private void add(MinMaxPairs other) {
        pairs += other.pairs;
        others += other.others;
        turned += other.turned;
    }

    // Which sample of a stretch starts a pair, and whether the smaller value comes first, is not known.
    private static MinMaxPairs best(double[] values, int from, int to) {
        MinMaxPairs best = new MinMaxPairs();
        for (int parity = 0; parity < 2; parity++) {
            for (int sign = -1; sign <= 1; sign += 2) {
                MinMaxPairs found = of(values, from + parity, to, sign);
                if (found.pairs > 0 && (best.pairs == 0 || found.others * best.pairs < best.others * found.pairs)) {
                    best = found;
                }
            }
        }
        return best;
    }

    private static MinMaxPairs of(double[] values, int from, int to, int sign) {
        MinMaxPairs found = new MinMaxPairs();
        for (int i = from; i + 1 < to; i += 2) {
            double step = sign * (values[i + 1] - values[i]);
            if (step == 0) {
                continue;
            }
            found.pairs++;
            found.others += step < 0 ? 1 : 0;
            boolean before = i > from && sign * (values[i] - values[i - 1]) < 0;
            boolean after = i + 2 < to && sign * (values[i + 2] - values[i + 1]) < 0;
            found.turned += before || after ? 1 : 0;
        }
        return found;
    }
}
