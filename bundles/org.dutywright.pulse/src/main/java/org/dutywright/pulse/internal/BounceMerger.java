// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;

/**
 * Takes the further transitions that follow an edge within the bounce window into the edge. The edge keeps the instant
 * of its first transition.
 *
 * <p>A bounce goes back and comes again, so an edge with its bounce has an odd number of transitions. A pulse shorter
 * than the window has two; it is no bounce, and its second transition is the next edge.
 */
final class BounceMerger implements PulseSink {
    private final double windowSeconds;
    private final PulseSink next;
    private final MarkLog bounces;

    /** Pulse behind the edge, with its bounces so far. */
    private Pulse head;
    /** Pulse that followed within the window and may be a bounce. */
    private Pulse tail;

    private double edgeSeconds;
    private double firstBounceSeconds;
    private double lastBounceSeconds;
    private int further;

    /**
     * A merger.
     *
     * @param windowSeconds how long an edge may bounce; 0 merges nothing
     * @param next gets the pulses that are left
     * @param bounces gets the places of bounces
     */
    BounceMerger(double windowSeconds, PulseSink next, MarkLog bounces) {
        this.windowSeconds = windowSeconds;
        this.next = next;
        this.bounces = bounces;
    }

    @Override
    public void pulse(Pulse pulse) throws IOException {
        boolean within = head != null && head.startsWithEdge && pulse.startSeconds <= edgeSeconds + windowSeconds;
        if (!within) {
            flush();
            begin(pulse);
        } else if (tail == null) {
            tail = pulse;
        } else {
            if (further == 0) {
                firstBounceSeconds = tail.startSeconds;
            }
            head.join(tail, pulse);
            further += 2;
            lastBounceSeconds = pulse.startSeconds;
            tail = null;
        }
        if (tail != null && tail.endSeconds > edgeSeconds + windowSeconds) {
            // nothing more can lie within the window of this edge, but something may in that of the next one
            Pulse edge = tail;
            flushHead();
            begin(edge);
        }
    }

    private void begin(Pulse pulse) {
        head = pulse;
        edgeSeconds = pulse.startSeconds;
        further = 0;
        tail = null;
    }

    private void flushHead() throws IOException {
        if (head == null) {
            return;
        }
        if (further > 0) {
            head.bounced = true;
            bounces.add(firstBounceSeconds, lastBounceSeconds, further, head.high);
        }
        next.pulse(head);
        head = null;
    }

    private void flush() throws IOException {
        flushHead();
        if (tail != null) {
            next.pulse(tail);
            tail = null;
        }
    }

    @Override
    public void excursion(Excursion excursion) throws IOException {
        next.excursion(excursion);
    }

    @Override
    public void segmentEnd() throws IOException {
        flush();
        next.segmentEnd();
    }
}
