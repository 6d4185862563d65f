// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

/**
 * A sample rate that the file or the user states beside what the time base rests on. It need not be true.
 *
 * @param origin where it is stated, for people ("line 3 of FILE", "--sample-rate")
 * @param sampleRateHz as stated
 * @param relativeTolerance how far it may lie from that of the time base for the digits in which both are printed
 */
public record StatedRate(String origin, double sampleRateHz, double relativeTolerance) {}
