// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.PulseEvent;

/** Collects events: counts all, lists the first 1,000 of each kind. Its instants count from the first sample. */
final class EventList {
    private static final int MOST_LISTED = 1000;

    private final double originSeconds;
    private final Map<EventKind, Long> counts = new EnumMap<>(EventKind.class);
    private final List<Listed> listed = new ArrayList<>();

    private record Listed(EventKind kind, double startSeconds, double endSeconds, String detail) {}

    EventList(double originSeconds) {
        this.originSeconds = originSeconds;
    }

    /**
     * Adds an event.
     *
     * @param detail made only if the event is listed
     */
    void add(EventKind kind, double startSeconds, double endSeconds, Supplier<String> detail) {
        long count = counts.merge(kind, 1L, Long::sum);
        if (count <= MOST_LISTED) {
            listed.add(new Listed(kind, startSeconds, Math.max(startSeconds, endSeconds), detail.get()));
        }
    }

    /** Number of events of each kind that occurred. */
    Map<EventKind, Long> counts() {
        return new EnumMap<>(counts);
    }

    /** The listed ones by start, in the capture's time. */
    List<PulseEvent> events(SpilledCycles cycles) throws IOException {
        List<PulseEvent> events = new ArrayList<>();
        listed.sort(Comparator.comparingDouble(Listed::startSeconds).thenComparing(Listed::kind));
        for (Listed one : listed) {
            double start = originSeconds + one.startSeconds();
            events.add(new PulseEvent(
                    one.kind(), start, originSeconds + one.endSeconds(), cycles.at(start), one.detail()));
        }
        return List.copyOf(events);
    }
}
