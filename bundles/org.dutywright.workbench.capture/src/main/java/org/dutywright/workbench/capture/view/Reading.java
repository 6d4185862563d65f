// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

/**
 * One sample.
 *
 * @param seconds its instant
 * @param value its value in the channel's unit
 */
public record Reading(double seconds, double value) {}
