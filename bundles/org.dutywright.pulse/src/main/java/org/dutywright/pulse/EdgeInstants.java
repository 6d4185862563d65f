// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * How the instants of a channel's transitions were found.
 *
 * @param fitted transitions with enough samples between the reference levels: a least-squares fit
 * @param interpolated the others: a straight line between the two samples that straddle the 50 % reference level
 */
public record EdgeInstants(long fitted, long interpolated) {
    /** No transition. */
    public static final EdgeInstants NONE = new EdgeInstants(0, 0);
}
