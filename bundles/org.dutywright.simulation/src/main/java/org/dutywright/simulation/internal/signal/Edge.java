// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

/**
 * A transition.
 *
 * @param seconds its 50 % instant
 * @param high the state that it leads to
 * @param reach share of the swing that it covers, 1 for a whole transition
 */
public record Edge(double seconds, boolean high, double reach) {

    /** Stands behind the last edge of a source. */
    static final Edge NEVER = new Edge(Double.POSITIVE_INFINITY, false, 1);

    /** A whole transition. */
    static Edge whole(double seconds, boolean high) {
        return new Edge(seconds, high, 1);
    }

    boolean isNever() {
        return seconds == Double.POSITIVE_INFINITY;
    }
}
