// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeSet;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.diagnosis.internal.lines.Say;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.PulseEvent;

/**
 * Extra pulses, runts and bouncing. On several channels at the same instants: coupled in from outside. On one: a
 * contact that bounces, or a pulse that does not come through (common practice, no source).
 */
final class DisturbanceRule implements Rule {
    private static final Set<EventKind> KINDS = EnumSet.of(EventKind.EXTRA_PULSE, EventKind.RUNT, EventKind.BOUNCE);

    private static final Set<EventKind> INTERRUPTIONS = EnumSet.of(EventKind.DROPOUT, EventKind.MISSING_PULSE);
    /** Spikes coupled in from outside reach all wires within far less than a period. */
    private static final double SAME_INSTANT_PERIODS = 0.02;

    private static final double BURST_PERIODS = 10;
    private static final int BURST_EVENTS = 3;

    @Override
    public List<Finding> findings(Evidence evidence) {
        List<Finding> findings = new ArrayList<>();
        if (evidence.tiedTogether()) {
            return findings;
        }
        Map<String, List<PulseEvent>> events = new LinkedHashMap<>();
        evidence.channels().forEach(it -> events.put(it.name(), events(it)));
        for (ChannelEvidence channel : evidence.channels()) {
            List<PulseEvent> own = events.get(channel.name());
            boolean counts = KINDS.stream().anyMatch(it -> channel.fails("events." + it.word()));
            if (!own.isEmpty() && counts) {
                NavigableSet<Double> others = startsOfOthers(events, channel);
                double within = SAME_INSTANT_PERIODS * channel.periodSeconds();
                long shared = own.stream()
                        .filter(it -> near(others, it.startSeconds(), within))
                        .count();
                findings.addAll(
                        2 * shared > own.size()
                                ? coherent(channel, own, shared, evidence)
                                : alone(channel, own, shared, evidence));
            }
        }
        return findings;
    }

    private static NavigableSet<Double> startsOfOthers(Map<String, List<PulseEvent>> events, ChannelEvidence channel) {
        NavigableSet<Double> starts = new TreeSet<>();
        events.forEach((name, all) -> {
            if (!name.equals(channel.name())) {
                all.forEach(it -> starts.add(it.startSeconds()));
            }
        });
        return starts;
    }

    private static boolean near(NavigableSet<Double> starts, double seconds, double within) {
        return !starts.subSet(seconds - within, true, seconds + within, true).isEmpty();
    }

    private static List<PulseEvent> events(ChannelEvidence channel) {
        double horizon = lastKnownInterruption(channel);
        return channel.measured().events().stream()
                .filter(it ->
                        KINDS.contains(it.kind()) && it.startSeconds() <= horizon && !besideInterruption(it, channel))
                .toList();
    }

    /** Not all interruptions are listed where there are many; behind the last one listed nothing is known of them. */
    private static double lastKnownInterruption(ChannelEvidence channel) {
        double horizon = Double.POSITIVE_INFINITY;
        for (EventKind kind : INTERRUPTIONS) {
            List<PulseEvent> listed = channel.events(kind);
            if (channel.count(kind) > listed.size() && !listed.isEmpty()) {
                horizon = Math.min(horizon, listed.get(listed.size() - 1).endSeconds());
            }
        }
        return horizon;
    }

    /** What comes within a period of an interruption is the contact that opens or closes, told there. */
    private static boolean besideInterruption(PulseEvent event, ChannelEvidence channel) {
        double period = channel.periodSeconds();
        return channel.measured().events().stream()
                .anyMatch(it -> INTERRUPTIONS.contains(it.kind())
                        && event.startSeconds() >= it.startSeconds() - period
                        && event.startSeconds() <= it.endSeconds() + period);
    }

    private static List<Finding> coherent(
            ChannelEvidence channel, List<PulseEvent> own, long shared, Evidence evidence) {
        List<String> names =
                evidence.channels().stream().map(ChannelEvidence::name).toList();
        String fact = fact(channel, own) + " "
                + String.format(Locale.ROOT, "%d of them come at the same instant on another channel.", shared);
        return List.of(
                Finding.of(Place.INTERFERENCE, names, 5).because(fact),
                Finding.of(Place.GROUND, Kind.INTERMITTENT, names, 0.7).because(fact),
                Finding.of(Place.RECORDING, names, 0.5).because(fact, "Recording leads pick up the same spikes."));
    }

    private static List<Finding> alone(ChannelEvidence channel, List<PulseEvent> own, long shared, Evidence evidence) {
        List<String> name = List.of(channel.name());
        String fact = fact(channel, own);
        String others = evidence.channels().size() < 2
                ? ""
                : (shared == 0 ? "None" : String.valueOf(shared)) + " of the events of " + channel.name() + ", "
                        + own.size() + " in all, comes at the same instant on another channel.";
        String burst = burst(channel, own);
        long extra =
                own.stream().filter(it -> it.kind() == EventKind.EXTRA_PULSE).count();
        boolean mostlyExtra = 2 * extra > own.size() && burst.isEmpty();
        double wire = mostlyExtra ? 2 : burst.isEmpty() ? 4 : 6;
        return List.of(
                Finding.of(Place.SIGNAL_WIRE, Kind.INTERMITTENT, name, wire)
                        .because(fact, burst)
                        .because(others),
                Finding.of(Place.INTERFERENCE, name, mostlyExtra ? 4 : 1.5)
                        .because(fact)
                        .although(burst)
                        .although(others),
                Finding.of(Place.SENSOR, Kind.INTERMITTENT, name, 1.5).because(fact),
                Finding.of(Place.MODULE_INPUT, name, 0.5).because(fact));
    }

    private static String fact(ChannelEvidence channel, List<PulseEvent> own) {
        List<String> counts = new ArrayList<>();
        for (EventKind kind : KINDS) {
            long count = own.stream().filter(it -> it.kind() == kind).count();
            if (count > 0) {
                counts.add(count + " " + kind.word());
            }
        }
        return channel.name() + " has " + String.join(", ", counts) + ", the first at "
                + Say.instant(own.get(0).startSeconds()) + ".";
    }

    private static String burst(ChannelEvidence channel, List<PulseEvent> own) {
        double within = BURST_PERIODS * channel.periodSeconds();
        int most = 1;
        int from = 0;
        for (int i = 0; i < own.size(); i++) {
            while (own.get(i).startSeconds() - own.get(from).startSeconds() > within) {
                from++;
            }
            most = Math.max(most, i - from + 1);
        }
        return most >= BURST_EVENTS
                ? "Up to " + most + " events of " + channel.name() + " come within " + Say.amount(within, "s")
                        + ": a burst."
                : "";
    }
}
