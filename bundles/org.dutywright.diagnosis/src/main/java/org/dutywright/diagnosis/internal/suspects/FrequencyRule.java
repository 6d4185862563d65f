// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.List;
import java.util.Locale;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.diagnosis.internal.lines.Say;
import org.dutywright.pulse.EventKind;

/**
 * A carrier off its limits. With perfect levels it is the sensor's own oscillator; all channels off by one factor may
 * as well be the recording's clock (common practice, no source).
 */
final class FrequencyRule implements Rule {
    private static final double SAME_FACTOR = 0.02;
    private static final String SLOW = "A supply that is too low slows some oscillators.";

    @Override
    public List<Finding> findings(Evidence evidence) {
        List<ChannelEvidence> off = evidence.failing("frequency");
        if (off.isEmpty() || evidence.tiedTogether()) {
            return List.of();
        }
        List<String> names = off.stream().map(ChannelEvidence::name).toList();
        boolean perfect = off.stream().allMatch(FrequencyRule::undisturbed);
        String facts = String.join(" ", off.stream().map(FrequencyRule::fact).toList());
        String levels = perfect
                ? "No level or transition of " + String.join(" and ", names)
                        + " passes a limit and no pulse is missing."
                : "";
        Finding sensor = Finding.of(Place.SENSOR, Kind.FREQUENCY, names, perfect ? 9 : 4)
                .because(facts)
                .because(levels);
        boolean all = off.size() == evidence.channels().size();
        return all && off.size() > 1 && oneFactor(off)
                ? oneFactor(sensor, names, facts)
                : single(sensor, names, facts, levels, all);
    }

    private static List<Finding> oneFactor(Finding sensor, List<String> names, String facts) {
        return List.of(
                sensor.because(facts, "All channels are off by about the same factor, as with a wrong part."),
                Finding.of(Place.RECORDING, names, 3)
                        .because(facts, "A wrong sample rate moves all carriers by one factor."),
                Finding.of(Place.SUPPLY, names, 1).because(facts, SLOW));
    }

    private static List<Finding> single(Finding sensor, List<String> names, String facts, String levels, boolean all) {
        boolean perfect = !levels.isEmpty();
        return List.of(
                sensor,
                Finding.of(Place.SUPPLY, names, 0.7)
                        .because(facts, SLOW)
                        .although(all ? "" : facts + " The other channel's carrier is within its limits."),
                Finding.of(Place.SIGNAL_WIRE, names, perfect ? 0.5 : 2)
                        .because(facts, perfect ? "" : "Missing or extra pulses change the count.")
                        .although(perfect ? levels + " A wire does not change the period of a clean signal." : ""));
    }

    private static boolean undisturbed(ChannelEvidence channel) {
        return channel.levelsPerfect()
                && channel.count(EventKind.DROPOUT) == 0
                && channel.count(EventKind.MISSING_PULSE) == 0
                && channel.count(EventKind.EXTRA_PULSE) == 0;
    }

    private static boolean oneFactor(List<ChannelEvidence> off) {
        double first = factor(off.get(0));
        return off.stream().allMatch(it -> Math.abs(factor(it) / first - 1) < SAME_FACTOR);
    }

    /** Measured frequency against the middle of its limits, or against the one limit there is. */
    private static double factor(ChannelEvidence channel) {
        Line line = channel.lines().get("frequency");
        double lower = line.lower().orElse(line.upper().orElse(1));
        double upper = line.upper().orElse(lower);
        return line.measured().orElseThrow() / ((lower + upper) / 2);
    }

    private static String fact(ChannelEvidence channel) {
        Line line = channel.lines().get("frequency");
        return String.format(
                Locale.ROOT,
                "%s runs at %s, allowed are %s to %s.",
                channel.name(),
                Say.amount(line.measured().orElseThrow(), "Hz"),
                line.lower().isPresent() ? Say.amount(line.lower().getAsDouble(), "Hz") : "any",
                line.upper().isPresent() ? Say.amount(line.upper().getAsDouble(), "Hz") : "any");
    }
}
