// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.events;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.reference.events.Injection.Expected;

/** What was found of one fault under one noise. */
final class Tally {
    final String fault;
    final double noiseShare;
    long injected;
    long found;
    private long wrongKind;
    private long missed;
    private long beside;
    private double worstCycles;
    final List<String> wrong = new ArrayList<>();

    Tally(String fault, double noiseShare) {
        this.fault = fault;
        this.noiseShare = noiseShare;
    }

    void add(long seed, double period, Injection injection, List<ChannelMeasurement> channels) {
        List<PulseEvent> left = new ArrayList<>(channels.get(0).events());
        for (Expected expected : injection.expected()) {
            injected++;
            Optional<PulseEvent> match = left.stream()
                    .filter(it -> it.kind() == expected.kind() && displacement(it, expected) <= period)
                    .findFirst();
            if (match.isPresent()) {
                found++;
                worstCycles = Math.max(worstCycles, displacement(match.orElseThrow(), expected) / period);
                left.remove(match.orElseThrow());
            } else if (left.stream().anyMatch(it -> isAt(it, expected, period))) {
                wrongKind++;
            } else {
                missed++;
            }
            if (match.isEmpty()) {
                wrong.add(
                        "seed %d, period %.6f s: %s, found %s".formatted(seed, period, injection.fault(), words(left)));
            }
        }
        channels.subList(1, channels.size()).forEach(channel -> left.addAll(channel.events()));
        beside += left.size();
        if (!left.isEmpty()) {
            wrong.add(
                    "seed %d, period %.6f s: %s, beside it %s".formatted(seed, period, injection.fault(), words(left)));
        }
    }

    private static double displacement(PulseEvent event, Expected expected) {
        double atStart = Math.abs(event.startSeconds() - expected.startSeconds());
        boolean toldEnd = expected.endSeconds() > expected.startSeconds();
        return toldEnd ? Math.max(atStart, Math.abs(event.endSeconds() - expected.endSeconds())) : atStart;
    }

    private static boolean isAt(PulseEvent event, Expected expected, double period) {
        return event.startSeconds() <= expected.endSeconds() + period
                && event.endSeconds() >= expected.startSeconds() - period;
    }

    private static String words(List<PulseEvent> events) {
        return events.stream()
                .limit(3)
                .map(it -> "%s from %.6f s to %.6f s (%s)"
                        .formatted(it.kind().word(), it.startSeconds(), it.endSeconds(), it.detail()))
                .toList()
                .toString();
    }

    Object[] row() {
        return new Object[] {
            fault,
            Math.round(100 * noiseShare) + " %",
            injected,
            found,
            wrongKind,
            missed,
            beside,
            found == 0 ? "-" : String.format(Locale.ROOT, "%.2f cycles", worstCycles)
        };
    }
}
