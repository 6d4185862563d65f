// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

/**
 * A run of samples without a gap.
 *
 * @param firstSample index of its first sample in the capture
 * @param sampleCount number of its samples, at least 1
 * @param startSeconds instant of its first sample in the capture's time
 */
public record Segment(long firstSample, long sampleCount, double startSeconds) {
    /** Index of the sample after its last one. */
    public long endSample() {
        return firstSample + sampleCount;
    }
}
