// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.diagnosis.internal.suspects.CarrierPhase.Verdict;
import org.dutywright.diagnosis.internal.suspects.Interruption.State;
import org.dutywright.pulse.EventKind;

/**
 * Interruptions that came back. Alone with the carrier in step: the sensor ran on and the contact is in the signal
 * path. On all channels within one cycle, or out of step: supply, ground, or a reset (common practice, no source).
 */
final class InterruptionRule implements Rule {
    @Override
    public List<Finding> findings(Evidence evidence) {
        List<Finding> findings = new ArrayList<>();
        if (evidence.tiedTogether()) {
            return findings;
        }
        for (ChannelEvidence channel : evidence.channels()) {
            List<Interruption> alone = channel.interruptions().stream()
                    .filter(it -> !it.together())
                    .toList();
            if (!alone.isEmpty()) {
                findings.addAll(alone(channel, new InterruptionSummary(channel.name(), alone, total(channel))));
            }
        }
        shared(evidence).ifPresent(it -> findings.addAll(together(it, evidence)));
        return findings;
    }

    private static Optional<InterruptionSummary> shared(Evidence evidence) {
        List<Interruption> shared = new ArrayList<>();
        long total = 0;
        List<String> names = new ArrayList<>();
        for (ChannelEvidence channel : evidence.channels()) {
            List<Interruption> own = channel.interruptions().stream()
                    .filter(Interruption::together)
                    .toList();
            if (!own.isEmpty()) {
                shared.addAll(own);
                total += total(channel);
                names.add(channel.name());
            }
        }
        return shared.isEmpty()
                ? Optional.empty()
                : Optional.of(new InterruptionSummary(String.join(" and ", names), shared, total));
    }

    private static long total(ChannelEvidence channel) {
        return channel.count(EventKind.DROPOUT) + channel.count(EventKind.MISSING_PULSE);
    }

    private static List<Finding> alone(ChannelEvidence channel, InterruptionSummary seen) {
        List<String> name = List.of(channel.name());
        return switch (seen.phase()) {
            case KEPT -> inStep(name, seen);
            case BROKEN ->
                List.of(
                        Finding.of(Place.SENSOR, Kind.RESET, name, 6)
                                .because(seen.fact())
                                .because(seen.phaseFact()),
                        Finding.of(Place.SUPPLY, Kind.INTERMITTENT, name, 2)
                                .because(seen.phaseFact(), "A feed of its own for this channel would do the same.")
                                .although(seen.aloneFact()),
                        Finding.of(Place.SIGNAL_WIRE, Kind.INTERMITTENT, name, 1)
                                .because(seen.fact())
                                .although(seen.phaseFact()));
            case UNTOLD ->
                List.of(
                        Finding.of(Place.SIGNAL_WIRE, Kind.INTERMITTENT, name, 4)
                                .because(seen.fact())
                                .because(seen.aloneFact()),
                        Finding.of(Place.SENSOR, name, 3).because(seen.fact()).although(seen.phaseFact()),
                        Finding.of(Place.MODULE_INPUT, Kind.INTERMITTENT, name, 1)
                                .because(seen.fact()));
        };
    }

    private static List<Finding> inStep(List<String> name, InterruptionSummary seen) {
        // A line that goes high while the carrier runs on has lost the output that pulls it down; one that stays low
        // may as well be held low by the output itself.
        boolean high = seen.state() == State.HIGH;
        String open = "The line goes to the pull-up meanwhile, as an open contact does.";
        String skips = "An output that skips pulses while its clock runs on looks the same.";
        return List.of(
                Finding.of(Place.SIGNAL_WIRE, Kind.INTERMITTENT, name, high ? 9 : 6)
                        .because(seen.fact(), high ? open : "")
                        .because(seen.phaseFact())
                        .because(seen.aloneFact()),
                Finding.of(Place.SENSOR, Kind.INTERMITTENT, name, high ? 0.8 : 2)
                        .because(seen.fact(), high ? "" : skips)
                        .although(high ? seen.phaseFact() : ""),
                Finding.of(Place.MODULE_INPUT, Kind.INTERMITTENT, name, 0.8)
                        .because(seen.phaseFact(), "A contact at the module's pin is in the signal path too."),
                Finding.of(Place.RECORDING, Kind.INTERMITTENT, name, 0.4)
                        .because(seen.fact(), "A recording lead with a bad contact looks the same."));
    }

    private static List<Finding> together(InterruptionSummary seen, Evidence evidence) {
        List<String> names =
                evidence.channels().stream().map(ChannelEvidence::name).toList();
        return seen.phase() == Verdict.KEPT ? togetherInStep(names, seen) : togetherAnew(names, seen, evidence);
    }

    private static List<Finding> togetherInStep(List<String> names, InterruptionSummary seen) {
        return List.of(
                Finding.of(Place.SIGNAL_WIRE, Kind.INTERMITTENT, names, 4)
                        .because(seen.fact(), "A connector carries both wires.")
                        .because(seen.phaseFact()),
                Finding.of(Place.RECORDING, Kind.INTERMITTENT, names, 2)
                        .because(seen.phaseFact(), "The recording's own reference lead would do the same."),
                Finding.of(Place.GROUND, Kind.INTERMITTENT, names, 1)
                        .because(seen.fact())
                        .although(seen.phaseFact()),
                Finding.of(Place.SUPPLY, Kind.INTERMITTENT, names, 1)
                        .because(seen.fact())
                        .although(seen.phaseFact()));
    }

    private static List<Finding> togetherAnew(List<String> names, InterruptionSummary seen, Evidence evidence) {
        Evidence.SupplyDips dips = evidence.supplyDips();
        boolean dipped = dips.dipped() * 2 > dips.looked();
        boolean low = seen.state() == State.LOW;
        double supply = low ? 7 : 5;
        double ground = low ? 1.5 : 4;
        if (dips.looked() > 0) {
            supply = dipped ? 9 : 3;
            ground = dipped ? 1 : 5;
        }
        String recorded = recorded(dips);
        String dead = low ? seen.fact() + " Pull-ups that stay alive would hold the lines high." : "";
        return List.of(
                Finding.of(Place.SUPPLY, Kind.INTERMITTENT, names, supply)
                        .because(seen.fact(), "They come on all of these channels within one cycle.")
                        .because(seen.phaseFact())
                        .because(dead)
                        .because(dipped ? recorded : "")
                        .although(dipped ? "" : recorded),
                Finding.of(Place.GROUND, Kind.INTERMITTENT, names, ground)
                        .because(seen.fact(), "They come on all of these channels within one cycle.")
                        .because(seen.phaseFact())
                        .because(dipped ? "" : recorded)
                        .although(dead)
                        .although(dipped ? recorded : ""),
                Finding.of(Place.SENSOR, Kind.RESET, names, 1.2)
                        .because(seen.phaseFact(), "A sensor that restarts by itself stops all its channels."));
    }

    private static String recorded(Evidence.SupplyDips dips) {
        return dips.looked() == 0
                ? ""
                : "The recorded supply falls below 90 % of its mean in " + dips.dipped() + " of " + dips.looked()
                        + " of them.";
    }
}
