// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

/**
 * Mean, range, standard deviation and lag-1 autocorrelation of a stream of values, in one pass and constant memory.
 *
 * <p>The first value is subtracted from all, then the updating formulas of Welford (1962) are used: a large mean costs no
 * digits. All sums carry their rounding errors along (Neumaier 1974): a million equal steps would else round the same way. With one value the standard deviation is 0; with none, mean and range are NaN. The autocorrelation is that of
 * the NIST reference sets: sum of (x[i] - m)(x[i+1] - m) over sum of (x[i] - m)^2; only values that follow each other
 * make a pair.
 */
final class Moments {
    private double shift;
    private long count;
    private double min = Double.NaN;
    private double max = Double.NaN;
    private final ExactSum mean = new ExactSum();
    private final ExactSum squares = new ExactSum();

    private boolean follows;
    private double last;
    private long pairs;
    /** Of the earlier and of the later values of all pairs: means, and the products of what they deviate by. */
    private final ExactSum earlierMean = new ExactSum();

    private final ExactSum laterMean = new ExactSum();
    private final ExactSum products = new ExactSum();

    void add(double value) {
        if (count == 0) {
            shift = value;
            min = value;
            max = value;
        }
        min = Math.min(min, value);
        max = Math.max(max, value);
        double deviation = value - shift;
        count++;
        double delta = deviation - mean.value();
        mean.add(delta / count);
        squares.add(delta * (deviation - mean.value()));
        if (follows) {
            pairs++;
            double earlier = last - earlierMean.value();
            earlierMean.add(earlier / pairs);
            laterMean.add((deviation - laterMean.value()) / pairs);
            products.add(earlier * (deviation - laterMean.value()));
        }
        last = deviation;
        follows = true;
    }

    /** The next value does not follow the last one. */
    void interrupt() {
        follows = false;
    }

    long count() {
        return count;
    }

    double mean() {
        return shift + mean.value();
    }

    double min() {
        return min;
    }

    double max() {
        return max;
    }

    double sd() {
        return count < 2 ? 0 : Math.sqrt(squares.value() / (count - 1));
    }

    /** Number of pairs of neighbours. */
    long pairs() {
        return pairs;
    }

    double autocorrelation() {
        double centre = mean.value();
        double ends = pairs * (earlierMean.value() - centre) * (laterMean.value() - centre);
        return (products.value() + ends) / squares.value();
    }

    /** A sum that keeps what rounding would lose. */
    private static final class ExactSum {
        private double sum;
        private double lost;

        void add(double value) {
            double next = sum + value;
            lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
            sum = next;
        }

        double value() {
            return sum + lost;
        }
    }
}
