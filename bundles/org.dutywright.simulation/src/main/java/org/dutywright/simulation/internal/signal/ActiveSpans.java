// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.dutywright.simulation.Fault;

/** Tells which spans hold at an instant; the instants asked for must not run backwards. */
final class ActiveSpans<T> {

    private final List<Span<T>> spans;
    private final List<Span<T>> active = new ArrayList<>();
    private int next;

    private ActiveSpans(List<Span<T>> spans) {
        this.spans = spans;
    }

    static <T> ActiveSpans<T> of(List<Span<T>> spans) {
        List<Span<T>> sorted = new ArrayList<>(spans);
        sorted.sort(Comparator.comparingDouble(Span::from));
        return new ActiveSpans<>(sorted);
    }

    /** The faults of one kind. */
    static <F extends Fault> ActiveSpans<F> of(Class<F> kind, List<Fault> faults, double recordingStart) {
        return of(faults.stream()
                .filter(kind::isInstance)
                .map(fault -> Span.of(kind.cast(fault), recordingStart))
                .toList());
    }

    /** What holds at an instant, in the order in which it began; valid until the next call. */
    List<Span<T>> at(double seconds) {
        if (!active.isEmpty()) {
            active.removeIf(span -> span.to() <= seconds);
        }
        while (next < spans.size() && spans.get(next).from() <= seconds) {
            Span<T> begun = spans.get(next++);
            if (begun.to() > seconds) {
                active.add(begun);
            }
        }
        return active;
    }
}
