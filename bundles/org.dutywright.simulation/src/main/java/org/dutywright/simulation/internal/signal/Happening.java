// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.Optional;
import org.dutywright.simulation.Fault;

/**
 * A fault as it came to pass.
 *
 * @param fault as the scenario states it
 * @param startSeconds where the signal begins to be wrong
 * @param endSeconds where it is right again
 * @param event kind of event that measuring should name there, empty if it is none's or depends on the limits
 */
public record Happening(Fault fault, double startSeconds, double endSeconds, Optional<String> event) {

    /** The event for a number of pulses that are absent in a row. */
    static Optional<String> eventForAbsent(long pulses) {
        if (pulses <= 0) {
            return Optional.empty();
        }
        return Optional.of(pulses <= 2 ? "missing-pulse" : "dropout");
    }
}
