// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.internal;

import java.io.IOException;
import java.util.Arrays;
import org.dutywright.capture.Samples;

/**
 * A first look at time stamps, in windows spread over all of them.
 *
 * @param medianStepSeconds median distance of neighbours
 * @param meanStepSeconds median over the windows of the mean distance in a window: blind to a few gaps, and not
 *     fooled by stamps printed so coarsely that neighbours repeat
 */
record StampSurvey(double medianStepSeconds, double meanStepSeconds) {
    private static final int WINDOWS = 64;
    private static final int WINDOW_STAMPS = 1025;

    /**
     * Looks at the stamps.
     *
     * @param stamps at least two
     * @param resolutionSeconds distance of two values that the printed digits can tell apart
     */
    static StampSurvey of(Samples stamps, double resolutionSeconds) throws IOException {
        long count = stamps.sampleCount();
        int size = (int) Math.min(WINDOW_STAMPS, count);
        int windows = (int) Math.min(WINDOWS, (count + size - 1) / size);
        double[] steps = new double[windows * (size - 1)];
        double[] means = new double[windows];
        double[] window = new double[size];
        boolean meansTell = true;
        for (int i = 0; i < windows; i++) {
            long first = windows == 1 ? 0 : (count - size) * i / (windows - 1);
            stamps.read(0, first, window, 0, size);
            for (int k = 1; k < size; k++) {
                steps[i * (size - 1) + k - 1] = window[k] - window[k - 1];
            }
            double span = window[size - 1] - window[0];
            means[i] = span / (size - 1);
            meansTell &= span >= 20 * resolutionSeconds;
        }
        return new StampSurvey(median(steps), meansTell ? median(means) : overallMean(stamps));
    }

    private static double overallMean(Samples stamps) throws IOException {
        double[] ends = new double[2];
        long last = stamps.sampleCount() - 1;
        stamps.read(0, 0, ends, 0, 1);
        stamps.read(0, last, ends, 1, 1);
        return (ends[1] - ends[0]) / last;
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        return values[values.length / 2];
    }
}
