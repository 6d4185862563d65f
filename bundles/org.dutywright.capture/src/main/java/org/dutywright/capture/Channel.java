// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

/**
 * One recorded quantity of a capture.
 *
 * @param name unique within its capture
 * @param unit symbol of the unit that the samples are in, without prefix ("V", "A", "%"), empty if unknown
 */
public record Channel(String name, String unit) {}
