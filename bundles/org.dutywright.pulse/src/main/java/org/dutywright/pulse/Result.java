// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

/**
 * One named number of a measurement.
 *
 * @param id unique over all measurements, letters, digits, dots and dashes ("duty", "transition.rise")
 * @param label what people read
 * @param unit symbol of the unit of the numbers, without prefix
 * @param outcome the numbers
 */
public record Result(String id, String label, String unit, Outcome outcome) {}
