// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

/**
 * A stretch of time in which nothing was recorded. No cycle and no event spans it.
 *
 * @param startSeconds instant of the last sample before
 * @param endSeconds instant of the first sample after
 */
public record Gap(double startSeconds, double endSeconds) {}
