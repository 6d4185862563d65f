// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.io.IOException;
import java.util.Arrays;
import java.util.Optional;
import org.dutywright.capture.CountScale;
import org.dutywright.capture.Progress;
import org.dutywright.capture.Samples;

/**
 * Decides how a channel lies in a store, in one pass over its values.
 *
 * <p>Counts stay counts if the source holds them and every value is one. Else float32, unless the largest error that
 * it makes is more than a tenth of the smallest step of the values. The step is the smallest distance of two values
 * that are neighbours in time anywhere, or neighbours in size in one of {@value #SORTED_BLOCKS} blocks: no sort of
 * all values is needed to find the step of a converter or of printed digits, which occurs everywhere. A constant
 * channel has no step and is float32.
 */
final class FormFinder {
    private static final int BLOCK = 1 << 16;
    private static final int SORTED_BLOCKS = 64;
    private static final int SORTED_VALUES = 1 << 12;
    private static final double LARGEST_LOSS = 0.1;
    /** Counts times scale, calculated once more, differ in the last digits of a double only. */
    private static final double COUNT_ROUNDING = 1e-6;

    private final Samples samples;
    private final int channel;
    private final Optional<CountScale> scale;
    private boolean areCounts;
    private double largestError;
    private double smallestStep = Double.POSITIVE_INFINITY;
    private double last = Double.NaN;

    private FormFinder(Samples samples, int channel) {
        this.samples = samples;
        this.channel = channel;
        scale = samples.counts(channel);
        areCounts = scale.isPresent();
    }

    /** Looks at all values of a channel and reports each as work. */
    static ColumnForm find(Samples samples, int channel, Progress progress) throws IOException {
        return new FormFinder(samples, channel).find(progress);
    }

    private ColumnForm find(Progress progress) throws IOException {
        double[] block = new double[BLOCK];
        long blocks = Math.ceilDiv(samples.sampleCount(), (long) BLOCK);
        long stride = Math.max(1, blocks / SORTED_BLOCKS);
        for (long i = 0; i < blocks; i++) {
            progress.checkCancelled();
            int count = (int) Math.min(BLOCK, samples.sampleCount() - i * BLOCK);
            samples.read(channel, i * BLOCK, block, 0, count);
            look(block, count);
            if (areCounts) {
                checkCounts(block, count);
            }
            if (i % stride == 0) {
                lookSorted(Arrays.copyOf(block, Math.min(count, SORTED_VALUES)));
            }
            progress.worked(count);
        }
        if (areCounts) {
            return ColumnForm.counts(scale.orElseThrow());
        }
        boolean single = Double.isFinite(largestError) && largestError <= LARGEST_LOSS * smallestStep;
        return ColumnForm.of(single ? ArrowField.Type.FLOAT32 : ArrowField.Type.FLOAT64);
    }

    private void look(double[] block, int count) {
        double before = last;
        double error = largestError;
        double step = smallestStep;
        for (int i = 0; i < count; i++) {
            double value = block[i];
            error = Math.max(error, Math.abs((float) value - value));
            double distance = Math.abs(value - before);
            if (distance < step && distance > 0) {
                step = distance;
            }
            before = value;
        }
        last = before;
        largestError = error;
        smallestStep = step;
    }

    private void lookSorted(double[] some) {
        Arrays.sort(some);
        for (int i = 1; i < some.length; i++) {
            double distance = some[i] - some[i - 1];
            if (distance > 0 && distance < smallestStep) {
                smallestStep = distance;
            }
        }
    }

    private void checkCounts(double[] block, int count) {
        CountScale known = scale.orElseThrow();
        double limit = COUNT_ROUNDING * Math.abs(known.scale());
        for (int i = 0; i < count; i++) {
            double code = known.countOf(block[i]);
            if (!(code >= Short.MIN_VALUE && code <= Short.MAX_VALUE)
                    || !(Math.abs(known.valueOf((int) code) - block[i]) <= limit)) {
                areCounts = false;
                return;
            }
        }
    }
}
