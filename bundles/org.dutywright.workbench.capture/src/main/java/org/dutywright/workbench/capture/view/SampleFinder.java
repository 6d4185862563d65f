// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

import java.io.IOException;
import org.dutywright.capture.TimeBase;

/** Finds samples by their instant, whatever the time base. */
final class SampleFinder {
    private final TimeBase timeBase;
    private final long sampleCount;

    SampleFinder(TimeBase timeBase, long sampleCount) {
        this.timeBase = timeBase;
        this.sampleCount = sampleCount;
    }

    /** Index of the first sample at or after an instant, looked for from a sample on; the count where none is. */
    long firstAtOrAfter(double seconds, long from) throws IOException {
        long low = from;
        long high = sampleCount;
        while (low < high) {
            long middle = (low + high) >>> 1;
            if (timeBase.secondsAt(middle) < seconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Index of the sample nearest to an instant. */
    long nearest(double seconds) throws IOException {
        long next = firstAtOrAfter(seconds, 0);
        if (next == 0) {
            return 0;
        }
        if (next == sampleCount) {
            return sampleCount - 1;
        }
        double after = timeBase.secondsAt(next) - seconds;
        return seconds - timeBase.secondsAt(next - 1) <= after ? next - 1 : next;
    }
}
