// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;
import org.dutywright.pulse.EventSettings;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Status;
import org.dutywright.pulse.internal.fitness.AcCoupling;
import org.dutywright.pulse.internal.fitness.ChannelFacts;
import org.dutywright.pulse.internal.fitness.FitnessLines;

/** Measures one capture: first what each channel shows by itself, then what takes the others to tell. */
public final class CaptureRun {
    /** Passes over a channel: survey, histogram, levels up to three times where the first do not do, pulses, shapes. */
    private static final int PASSES = 7;

    private final Capture capture;
    private final PulseSettings settings;
    private final Progress progress;
    private final Workers workers;
    private final List<ChannelAnalysis> channels = new ArrayList<>();

    private CaptureRun(Capture capture, PulseSettings settings, int threads, Progress progress) {
        this.capture = capture;
        this.settings = settings;
        this.progress = progress;
        workers = new Workers(threads, progress);
    }

    /**
     * Measures; the caller closes the result.
     *
     * @param threads channels that are worked on at once; the result is the same for any number
     */
    public static CaptureMeasurement run(
            Capture capture,
            Map<String, ChannelPlan> plans,
            PulseSettings settings,
            double timeBaseRelative,
            MeasurementRunner runner,
            int threads,
            Progress progress)
            throws IOException {
        CaptureRun run = new CaptureRun(capture, settings, threads, progress);
        try {
            run.analyse(plans);
            run.nameStuck();
            run.judge();
            List<Fitness> fitness = run.fitness();
            return new CaptureMeasurement(capture, settings, fitness, run.measured(fitness, runner, timeBaseRelative));
        } catch (IOException | RuntimeException e) {
            for (ChannelAnalysis channel : run.channels) {
                channel.close();
            }
            throw e;
        }
    }

    private void analyse(Map<String, ChannelPlan> plans) throws IOException {
        long work = PASSES * capture.sampleCount();
        int count = capture.channels().size();
        progress.begin("measuring", work * count);
        ChannelAnalysis[] read = new ChannelAnalysis[count];
        try {
            workers.each(count, (i, whole) -> {
                ChannelPlan plan = plans.getOrDefault(capture.channels().get(i).name(), ChannelPlan.unknown());
                ChannelProgress part = new ChannelProgress(whole, work);
                read[i] = ChannelAnalysis.of(new ChannelSource(capture, i, part), plan, settings);
                part.finish();
            });
        } finally {
            Arrays.stream(read).filter(Objects::nonNull).forEach(channels::add);
        }
    }

    private List<ChannelAnalysis> withPulses() {
        return channels.stream().filter(ChannelAnalysis::hasPulses).toList();
    }

    private void nameStuck() throws IOException {
        List<ChannelAnalysis> healthy = withPulses();
        double swing = 0;
        double middle = 0;
        for (ChannelAnalysis other : healthy) {
            Thresholds thresholds = other.states().orElseThrow().thresholds();
            swing += thresholds.swing() / healthy.size();
            middle += thresholds.middle() / healthy.size();
        }
        double limit = healthy.isEmpty() ? settings.get(EventSettings.STUCK_ALONE) : middle;
        for (ChannelAnalysis channel : channels) {
            if (channel.isSteady(swing)) {
                double level = channel.survey().orElseThrow().mean();
                boolean high = level > limit;
                String unit = channel.channel().unit();
                String compared = healthy.isEmpty()
                        ? Words.of("%s %.4g %s", high ? "above" : "not above", limit, unit)
                        : Words.of("nearer the %s level of the other channels", high ? "high" : "low");
                channel.stuck(
                        high,
                        Words.of(
                                        "no transition in the whole capture, the level of %.4g %s is %s",
                                        level, unit, compared)
                                .replace("  ", " "));
            }
        }
    }

    private void judge() throws IOException {
        List<ChannelAnalysis> healthy = withPulses();
        double shortest = healthy.stream()
                .flatMap(channel -> channel.medianPeriodSeconds().stream())
                .mapToDouble(Double::doubleValue)
                .min()
                .orElse(Double.NaN);
        workers.each(healthy.size(), (i, part) -> {
            part.checkCancelled();
            healthy.get(i).judge(shortest);
        });
        for (ChannelAnalysis channel : healthy) {
            progress.checkCancelled();
            List<ChannelAnalysis> others = channels.stream()
                    .filter(it -> it != channel && it.role() == Role.PWM)
                    .toList();
            DutyJumps.find(channel, others, settings);
        }
        for (ChannelAnalysis channel : healthy) {
            channel.refuseUnreadable();
        }
    }

    private List<Fitness> fitness() throws IOException {
        ChannelFacts[] facts = new ChannelFacts[channels.size()];
        workers.each(facts.length, (i, part) -> {
            part.checkCancelled();
            facts[i] = FactsCollector.of(channels.get(i));
        });
        return FitnessLines.of(capture, List.of(facts), settings);
    }

    private List<ChannelMeasurement> measured(List<Fitness> fitness, MeasurementRunner runner, double timeBaseRelative)
            throws IOException {
        ChannelMeasurement[] measured = new ChannelMeasurement[channels.size()];
        workers.each(measured.length, (i, part) -> {
            ChannelAnalysis channel = channels.get(i);
            Optional<String> levelless = AcCoupling.reason(channel.channel().name(), fitness);
            measured[i] = measured(channel, levelless, runner, timeBaseRelative, part);
            channel.release();
        });
        return List.of(measured);
    }

    private static ChannelMeasurement measured(
            ChannelAnalysis channel,
            Optional<String> levelless,
            MeasurementRunner runner,
            double timeBaseRelative,
            Progress progress)
            throws IOException {
        Map<String, Result> results = channel.hasPulses()
                ? runner.run(channel, timeBaseRelative, progress)
                : runner.absent(channel.channel().unit(), whyNot(channel));
        if (levelless.isPresent()) {
            results = AcCoupling.withoutLevels(results, channel.channel().unit(), levelless.get());
        }
        long disturbed = 0;
        CycleTable.Cursor cursor = channel.cycles().cursor();
        for (Cycle cycle = cursor.next(); cycle != null; cycle = cursor.next()) {
            disturbed += cycle.disturbed() ? 1 : 0;
        }
        return new ChannelMeasurement(
                channel.channel(),
                channel.role(),
                channel.active(),
                channel.status(),
                channel.reason(),
                levelless.isPresent() ? Optional.empty() : channel.levels(),
                channel.summary(),
                channel.medianPeriodSeconds(),
                channel.cycles().size(),
                disturbed,
                results,
                channel.events().counts(),
                channel.events().events(channel.cycles()),
                channel.cycles(),
                channel.edgeInstants());
    }

    private static String whyNot(ChannelAnalysis channel) {
        return channel.status() == Status.OK
                ? "a channel with the role " + channel.role().word() + " has no pulses"
                : channel.reason();
    }
}
