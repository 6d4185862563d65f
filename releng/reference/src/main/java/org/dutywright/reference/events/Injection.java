// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.events;

import java.util.List;
import org.dutywright.pulse.EventKind;
import org.dutywright.simulation.Fault;

/**
 * Something wrong that was put into the first channel of a bench, and what must be found of it.
 *
 * @param fault put into it
 * @param expected events in order; all others are false
 */
record Injection(Fault fault, List<Expected> expected) {
    /**
     * An event that must be found.
     *
     * @param kind its kind
     * @param startSeconds where it begins
     * @param endSeconds where it ends, where that is told too; else the same
     */
    record Expected(EventKind kind, double startSeconds, double endSeconds) {}

    /** A fault that makes one event. */
    static Injection of(Fault fault, EventKind kind, double startSeconds, double endSeconds) {
        return new Injection(fault, List.of(new Expected(kind, startSeconds, endSeconds)));
    }
}
