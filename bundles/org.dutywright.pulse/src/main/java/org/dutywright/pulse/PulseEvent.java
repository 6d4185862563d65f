// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.OptionalLong;

/**
 * Something at one place of a channel that a healthy signal does not show.
 *
 * @param kind what it is
 * @param startSeconds where it begins, in the capture's time
 * @param endSeconds where it ends, not before its start
 * @param cycle index of the cycle it falls into, empty before the first or after the last whole cycle
 * @param detail the measured facts, one sentence with units, without a full stop
 */
public record PulseEvent(EventKind kind, double startSeconds, double endSeconds, OptionalLong cycle, String detail) {}
