// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

/**
 * Mean, range, standard deviation and lag-1 autocorrelation of a stream of values, in one pass and constant memory.
 *
 * <p>The first value is subtracted from all, then the updating formulas of Welford (1962) are used: a large mean costs no
 * digits. With one value the standard deviation is 0; with none, mean and range are NaN. The autocorrelation is that of
 * the NIST reference sets: sum of (x[i] - m)(x[i+1] - m) over sum of (x[i] - m)^2; only values that follow each other
 * make a pair.
 */
final class Moments {
    private double shift;
    private long count;
    private double min = Double.NaN;
    private double max = Double.NaN;
    private double mean;
    private double squares;

    private boolean follows;
    private double last;
    private long pairs;
    private double products;
    private double pairSum;

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
        double delta = deviation - mean;
        mean += delta / count;
        squares += delta * (deviation - mean);
        if (follows) {
            pairs++;
            products += last * deviation;
            pairSum += last + deviation;
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
        return shift + mean;
    }

    double min() {
        return min;
    }

    double max() {
        return max;
    }

    double sd() {
        return count < 2 ? 0 : Math.sqrt(squares / (count - 1));
    }

    /** Number of pairs of neighbours. */
    long pairs() {
        return pairs;
    }

    double autocorrelation() {
        return (products - mean * pairSum + pairs * mean * mean) / squares;
    }
}
