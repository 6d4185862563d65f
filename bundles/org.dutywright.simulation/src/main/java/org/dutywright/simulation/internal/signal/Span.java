// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import org.dutywright.simulation.Fault;

/**
 * A stretch of time in which something holds.
 *
 * @param from it holds from here on
 * @param to it holds no longer
 * @param what the thing
 */
record Span<T>(double from, double to, T what) {

    /** The span of a fault. One that begins with the recording held before it too, so nothing changes at its start. */
    static <F extends Fault> Span<F> of(F fault, double recordingStart) {
        double from = fault.startSeconds() <= recordingStart ? Double.NEGATIVE_INFINITY : fault.startSeconds();
        return new Span<>(from, fault.endSeconds(), fault);
    }
}
