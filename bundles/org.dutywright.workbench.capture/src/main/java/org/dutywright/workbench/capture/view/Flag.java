// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import org.dutywright.pulse.PulseEvent;

/**
 * The flag of an event, or of several whose flags would cover each other: it carries the word of the kind that names a
 * place first, and how many more there are.
 *
 * @param x left edge in the plot, where the first event begins
 * @param width width of the flag
 * @param event the one whose word is shown
 * @param count number of events it stands for
 */
public record Flag(int x, int width, PulseEvent event, int count) {
    private static final int PADDING = 4;
    private static final int GAP = 2;

    /** What the flag says. */
    public String text() {
        return text(event, count);
    }

    /** Where the text begins. */
    public int textX() {
        return x + PADDING;
    }

    private static String text(PulseEvent event, int count) {
        return count == 1 ? event.kind().word() : event.kind().word() + " +" + (count - 1);
    }

    /**
     * The flags of the events that begin in a window, from left to right, none covering another.
     *
     * @param widthOfText width of a text in pixels
     */
    public static List<Flag> of(List<PulseEvent> events, TimeScale scale, ToIntFunction<String> widthOfText) {
        List<PulseEvent> shown = events.stream()
                .filter(event -> event.startSeconds() >= scale.shown().startSeconds()
                        && event.startSeconds() <= scale.shown().endSeconds())
                .sorted(Comparator.comparingDouble(PulseEvent::startSeconds))
                .toList();
        List<Flag> flags = new ArrayList<>();
        for (PulseEvent event : shown) {
            int x = scale.pixelAt(event.startSeconds());
            if (!flags.isEmpty() && x < flags.getLast().x() + flags.getLast().width() + GAP) {
                Flag joined = flags.removeLast();
                PulseEvent first = joined.event().kind().compareTo(event.kind()) <= 0 ? joined.event() : event;
                flags.add(flag(joined.x(), first, joined.count() + 1, widthOfText));
            } else {
                flags.add(flag(x, event, 1, widthOfText));
            }
        }
        return pulledIn(flags, scale.widthPixels());
    }

    /** The flag at a place, empty between flags. */
    public static Optional<Flag> at(List<Flag> flags, int x) {
        return flags.stream()
                .filter(flag -> x >= flag.x() && x < flag.x() + flag.width())
                .findFirst();
    }

    private static Flag flag(int x, PulseEvent event, int count, ToIntFunction<String> widthOfText) {
        return new Flag(x, widthOfText.applyAsInt(text(event, count)) + 2 * PADDING, event, count);
    }

    // the last one may reach beyond the edge; it moves to the left as far as its neighbour lets it
    private static List<Flag> pulledIn(List<Flag> flags, int widthPixels) {
        if (flags.isEmpty() || flags.getLast().x() + flags.getLast().width() <= widthPixels) {
            return flags;
        }
        Flag last = flags.removeLast();
        int free = flags.isEmpty() ? 0 : flags.getLast().x() + flags.getLast().width() + GAP;
        flags.add(new Flag(Math.max(free, widthPixels - last.width()), last.width(), last.event(), last.count()));
        return flags;
    }
}
