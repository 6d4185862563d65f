// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

/**
 * What two channels show together.
 *
 * @param first one of them
 * @param second the other
 * @param travel how their travel differs; nothing counted where it could not be compared
 * @param edges how many edges they share
 */
record PairEvidence(ChannelEvidence first, ChannelEvidence second, TravelDifference travel, SharedEdges edges) {
    private static final double SAME_PATTERN = 0.6;

    /** Far more edges coincide than carriers of their own would give: the wires show the same pattern. */
    boolean samePattern() {
        return edges.edges() >= 20 && edges.share() > Math.max(SAME_PATTERN, 4 * edges.expectedShare());
    }
}
