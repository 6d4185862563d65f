// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Gap;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Status;

/** Says what a recording can and cannot carry. */
public final class FitnessLines {
    private static final int LEAST_SAMPLES = 2;

    /** With a larger share of its cycles too short for the sample rate, a channel is recorded too coarsely. */
    private static final double LARGEST_SHARE = 0.05;

    private final PulseSettings settings;
    private final List<Fitness> lines = new ArrayList<>();

    private FitnessLines(PulseSettings settings) {
        this.settings = settings;
    }

    /** The lines of a capture and its channels. */
    public static List<Fitness> of(Capture capture, List<ChannelAnalysis> channels, PulseSettings settings)
            throws IOException {
        FitnessLines lines = new FitnessLines(settings);
        lines.gaps(capture);
        for (ChannelAnalysis channel : channels) {
            if (channel.role() == Role.PWM) {
                lines.channel(channel);
            }
        }
        return List.copyOf(lines.lines);
    }

    private void add(String item, Grade grade, String reason) {
        lines.add(new Fitness(item, grade, reason));
    }

    // A gap is no fault of the signal; the recording is poor only where more is missing than there.
    private void gaps(Capture capture) throws IOException {
        List<Gap> gaps = capture.timeBase().gaps();
        if (gaps.isEmpty()) {
            add("capture.gaps", Grade.GOOD, "no gap in the time stamps");
            return;
        }
        double missing = 0;
        for (Gap gap : gaps) {
            missing += gap.endSeconds() - gap.startSeconds();
        }
        double recorded = capture.sampleCount() * capture.timeBase().stepSeconds();
        add(
                "capture.gaps",
                missing > recorded ? Grade.POOR : Grade.GOOD,
                Words.of("%d gaps, %s in all; no cycle and no event spans them", gaps.size(), Words.seconds(missing)));
    }

    private void channel(ChannelAnalysis channel) throws IOException {
        String name = channel.channel().name();
        if (channel.status() == Status.UNREADABLE) {
            add(name + ".samplesPerPulse", Grade.UNFIT, channel.reason());
        }
        if (!channel.hasPulses()) {
            return;
        }
        Shortest shortest = shortest(channel);
        if (shortest.counted == 0) {
            add(name + ".cycles", Grade.UNFIT, "no whole, undisturbed cycle; record for longer");
        } else {
            add(name + ".cycles", Grade.GOOD, Words.of("%d whole, undisturbed cycles", shortest.counted));
            samples(name, shortest, channel.stepSeconds());
        }
        steps(name, channel);
    }

    // A few short pulses are what the signal did, and must be judged; only many are the recording's fault.
    private void samples(String name, Shortest shortest, double stepSeconds) {
        double poor = settings.get(PulseSettings.POOR_SAMPLES);
        Grade grade = Grade.GOOD;
        if (shortest.unreadable > LARGEST_SHARE * shortest.counted) {
            grade = Grade.UNFIT;
        } else if (shortest.coarse > LARGEST_SHARE * shortest.counted) {
            grade = Grade.POOR;
        }
        double samples = shortest.seconds / stepSeconds;
        String some = samples < poor
                ? Words.of(", %d of %d cycles have fewer than %.0f", shortest.coarse, shortest.counted, poor)
                : "";
        String advice = grade == Grade.GOOD
                ? ""
                : Words.of("; record at %.0f times the sample rate or more", Math.ceil(poor / samples));
        add(
                name + ".samplesPerPulse",
                grade,
                Words.of("the shortest pulse has %.1f samples%s%s", samples, some, advice));
    }

    private void steps(String name, ChannelAnalysis channel) {
        States states = channel.states().orElseThrow();
        if (!(states.codeStep() > 0)) {
            add(name + ".levelResolution", Grade.GOOD, "too few different values to tell the code step");
            return;
        }
        double steps = states.thresholds().swing() / states.codeStep();
        boolean poor = steps < settings.get(PulseSettings.POOR_STEPS);
        add(
                name + ".levelResolution",
                poor ? Grade.POOR : Grade.GOOD,
                Words.of(
                        "the swing has %.3g code steps of %.3g%s",
                        steps, states.codeStep(), poor ? "; choose a smaller range" : ""));
    }

    /** The shortest pulse or pause of the undisturbed cycles. */
    private Shortest shortest(ChannelAnalysis channel) throws IOException {
        double coarseSeconds = settings.get(PulseSettings.POOR_SAMPLES) * channel.stepSeconds();
        double unreadableSeconds = LEAST_SAMPLES * channel.stepSeconds();
        Shortest shortest = new Shortest();
        CycleTable.Cursor cursor = channel.cycles().cursor();
        for (Cycle cycle = cursor.next(); cycle != null; cycle = cursor.next()) {
            if (!cycle.disturbed()) {
                shortest.counted++;
                double pause = cycle.periodSeconds() - cycle.pulseDurationSeconds();
                double least = Math.min(pause, cycle.pulseDurationSeconds());
                shortest.seconds = Math.min(shortest.seconds, least);
                shortest.coarse += least < coarseSeconds ? 1 : 0;
                shortest.unreadable += least < unreadableSeconds ? 1 : 0;
            }
        }
        return shortest;
    }

    private static final class Shortest {
        private long counted;
        private long coarse;
        private long unreadable;
        private double seconds = Double.POSITIVE_INFINITY;
    }
}
