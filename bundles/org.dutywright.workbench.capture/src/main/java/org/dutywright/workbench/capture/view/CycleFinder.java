// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

import java.io.IOException;
import java.util.Optional;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;

/** Finds the cycle at an instant. */
public final class CycleFinder {
    private CycleFinder() {}

    /** The cycle that the instant lies in, empty before the first, after the last and in pauses between them. */
    public static Optional<Cycle> at(CycleTable cycles, double seconds) throws IOException {
        long low = 0;
        long high = cycles.size();
        // the first cycle that begins later
        while (low < high) {
            long middle = (low + high) >>> 1;
            if (cycles.get(middle).startSeconds() <= seconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        if (low == 0) {
            return Optional.empty();
        }
        return Optional.of(cycles.get(low - 1)).filter(cycle -> seconds < cycle.endSeconds());
    }
}
