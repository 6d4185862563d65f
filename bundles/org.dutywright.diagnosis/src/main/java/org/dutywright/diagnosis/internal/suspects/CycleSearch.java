// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.io.IOException;
import org.dutywright.pulse.CycleTable;

/** Finds cycles by time. */
final class CycleSearch {
    private CycleSearch() {}

    /** Index of the first cycle that starts at an instant or later; the size of the table if there is none. */
    static long firstStartingFrom(CycleTable cycles, double seconds) throws IOException {
        long low = 0;
        long high = cycles.size();
        while (low < high) {
            long middle = (low + high) >>> 1;
            if (cycles.get(middle).startSeconds() < seconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
