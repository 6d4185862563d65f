// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.Optional;
import org.dutywright.capture.Channel;
import org.dutywright.capture.TimeBase;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.EdgeInstants;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.FitnessSettings;
import org.dutywright.pulse.InstrumentErrors;
import org.dutywright.pulse.LevelSummary;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.StateLevels;
import org.dutywright.pulse.Status;
import org.dutywright.pulse.internal.fitness.SampleSigns;
import org.dutywright.pulse.internal.fitness.ShortPulses;

/**
 * One channel on its way through the stages: survey and levels, pulses, cycles and events. The stages that need other
 * channels are called once all channels have come as far.
 */
public final class ChannelAnalysis implements AutoCloseable {
    /** Pulses with fewer samples than this cannot be told from single samples. */
    private static final int LEAST_SAMPLES = 2;

    private final ChannelSource source;
    private final ChannelPlan plan;
    private final PulseSettings settings;
    private final double originSeconds;
    private final ActiveLevel active;
    private EventList events;
    private SpilledCycles cycles;

    private Role role;
    private Status status = Status.OK;
    private String reason = "";
    private Optional<SampleSurvey> survey = Optional.empty();
    private Optional<States> states = Optional.empty();
    private Optional<PulseStages> stages = Optional.empty();
    private Optional<SampleSigns> signs = Optional.empty();
    private Optional<ShortPulses> shortPulses = Optional.empty();
    private Optional<ShapeLog> shapes = Optional.empty();
    private EdgeFacts edges = EdgeFacts.NONE;
    private double medianPeriodSeconds = Double.NaN;

    private ChannelAnalysis(ChannelSource source, ChannelPlan plan, PulseSettings settings) throws IOException {
        this.source = source;
        this.plan = plan;
        this.settings = settings;
        originSeconds = ChannelBlocks.originSeconds(source.capture());
        active = plan.active().orElse(ActiveLevel.HIGH);
        events = new EventList(originSeconds);
        cycles = new SpilledCycles(originSeconds);
        role = plan.role().orElse(Role.LEVEL);
    }

    /** Reads the channel: survey, states, pulses, median period. */
    public static ChannelAnalysis of(ChannelSource source, ChannelPlan plan, PulseSettings settings)
            throws IOException {
        ChannelAnalysis analysis = new ChannelAnalysis(source, plan, settings);
        try {
            analysis.read();
            return analysis;
        } catch (IOException | RuntimeException e) {
            analysis.close();
            throw e;
        }
    }

    private void read() throws IOException {
        if (role == Role.IGNORE) {
            return;
        }
        if (source.capture().sampleCount() == 0) {
            fail(Status.NO_SIGNAL, "the capture has no samples");
            return;
        }
        Windows windows = new Windows(source.capture().sampleCount());
        SampleSurvey found = SampleSurvey.of(source.open(), windows);
        if (!found.isUsable()) {
            fail(Status.UNREADABLE, "there are values too large to be measured, or that are no numbers");
            return;
        }
        survey = Optional.of(found);
        boolean twoStates = plan.role().isEmpty() || role == Role.PWM || role == Role.SWITCH;
        if (!twoStates) {
            return;
        }
        LevelFinder finder = new LevelFinder(source, found, settings);
        states = finder.find();
        if (plan.role().isEmpty() && states.isPresent()) {
            role = Role.PWM;
        }
        if (role != Role.PWM) {
            return;
        }
        if (states.isEmpty()) {
            fail(Status.NO_SIGNAL, finder.reason());
        } else if (states.orElseThrow().samplesPerPulse() < LEAST_SAMPLES) {
            fail(
                    Status.UNREADABLE,
                    "half of the pulses have fewer than 2 samples, so that a faster carrier would look the same; record at a"
                            + " higher sample rate");
        } else {
            findPulses(states.orElseThrow());
            signs = Optional.of(FactsCollector.signs(windows, found, states.orElseThrow()));
        }
    }

    private void fail(Status failed, String why) {
        if (role == Role.PWM) {
            status = failed;
            reason = why;
        }
    }

    private void findPulses(States found) throws IOException {
        PulseStages pulses = PulseStages.run(source, found, settings);
        stages = Optional.of(pulses);
        shapes = Optional.of(ShapePass.run(source, pulses.pulses(), found.track(), settings, plan.input()));
        edges = EdgeFacts.of(pulses, found, source.capture().timeBase());
        medianPeriodSeconds = RawCycle.medianPeriodSeconds(pulses.pulses(), active == ActiveLevel.HIGH);
    }

    /** Whether the channel was to carry pulses and shows no two states, but a level that hardly moves. */
    public boolean isSteady(double swingOfOthers) {
        double mostSd = swingOfOthers > 0 ? 0.1 * swingOfOthers : 0.5;
        return status == Status.NO_SIGNAL
                && survey.isPresent()
                && survey.orElseThrow().sd() <= mostSd;
    }

    /** Calls a steady channel stuck. */
    public void stuck(boolean high, String why) throws IOException {
        fail(high ? Status.STUCK_HIGH : Status.STUCK_LOW, why);
        TimeBase timeBase = source.capture().timeBase();
        double end = timeBase.secondsAt(source.capture().sampleCount() - 1) - originSeconds;
        events.add(high ? EventKind.STUCK_HIGH : EventKind.STUCK_LOW, 0, end, () -> why);
    }

    /**
     * Judges the cycles.
     *
     * @param otherPeriodSeconds period to judge by where the channel has no whole cycle, NaN if unknown
     */
    public void judge(double otherPeriodSeconds) throws IOException {
        if (stages.isEmpty()) {
            return;
        }
        double period = Double.isNaN(medianPeriodSeconds) ? otherPeriodSeconds : medianPeriodSeconds;
        EventLimits limits = EventLimits.of(
                period,
                uEdgeSeconds(),
                source.capture().timeBase().stepSeconds(),
                states.orElseThrow(),
                plan.transitionMaxSeconds(),
                settings);
        EventFinder.run(
                stages.orElseThrow(),
                active == ActiveLevel.HIGH,
                limits,
                channel().unit(),
                states.orElseThrow(),
                events,
                cycles);
        shortPulses = Optional.of(ShortPulses.of(cycles, stepSeconds(), settings.get(FitnessSettings.POOR_SAMPLES)));
    }

    /**
     * Takes back what was measured where the samples are too few to carry any number. To be called when no other channel
     * needs the cycles any more.
     */
    public void refuseUnreadable() throws IOException {
        Optional<String> why =
                shortPulses.flatMap(it -> it.unreadable(cycles.size(), medianPeriodSeconds / stepSeconds()));
        if (why.isEmpty()) {
            return;
        }
        fail(Status.UNREADABLE, why.get());
        close();
        stages = Optional.empty();
        medianPeriodSeconds = Double.NaN;
        events = new EventList(originSeconds);
        cycles = new SpilledCycles(originSeconds);
    }

    Optional<ShortPulses> shortPulses() {
        return shortPulses;
    }

    Optional<SampleSigns> signs() {
        return signs;
    }

    /** The channel. */
    public Channel channel() {
        return source.capture().channels().get(source.channel());
    }

    ChannelPlan plan() {
        return plan;
    }

    /** Its role. */
    public Role role() {
        return role;
    }

    /** Its active level. */
    public ActiveLevel active() {
        return active;
    }

    /** Whether its pulses could be measured. */
    public Status status() {
        return status;
    }

    /** Why not, empty if they could. */
    public String reason() {
        return reason;
    }

    /** Whether it has pulses that were measured. */
    public boolean hasPulses() {
        return stages.isPresent();
    }

    /** Its state levels with all that is stated about the recorder, if it has two states. */
    public Optional<StateLevels> levels() {
        return states.map(States::levels)
                .map(it -> new StateLevels(
                        instrument().with(it.low()), instrument().with(it.high()), it.lowNoise(), it.highNoise()));
    }

    private InstrumentErrors instrument() {
        return InstrumentErrors.of(settings, channel().unit());
    }

    Optional<States> states() {
        return states;
    }

    Optional<SampleSurvey> survey() {
        return survey;
    }

    /** Median period of its cycles. */
    public Optional<Double> medianPeriodSeconds() {
        return Double.isNaN(medianPeriodSeconds) ? Optional.empty() : Optional.of(medianPeriodSeconds);
    }

    double uEdgeSeconds() {
        return Math.hypot(edges.noiseSeconds(), edges.samplingSeconds());
    }

    double originSeconds() {
        return originSeconds;
    }

    double stepSeconds() {
        return source.capture().timeBase().stepSeconds();
    }

    EventList events() {
        return events;
    }

    SpilledCycles cycles() {
        return cycles;
    }

    Optional<PulseLog> pulses() {
        return stages.map(PulseStages::pulses);
    }

    Optional<ShapeLog> shapes() {
        return shapes;
    }

    Optional<MarkLog> lateEdges() {
        return stages.map(PulseStages::lateEdges);
    }

    /** How the instants of its transitions were found. */
    EdgeInstants edgeInstants() {
        return stages.map(PulseStages::edgeInstants).orElse(EdgeInstants.NONE);
    }

    EdgeFacts edges() {
        return edges;
    }

    /** What measurements may know; only for a channel with pulses. */
    ChannelContext context(double timeBaseRelative) {
        return MeasuringContext.of(this, settings, timeBaseRelative);
    }

    /** Summary of all samples. */
    Optional<LevelSummary> summary() {
        return survey.map(it -> it.summary(instrument()));
    }

    /** Frees all but the cycles. */
    public void release() throws IOException {
        if (states.isPresent()) {
            states.orElseThrow().track().close();
        }
        if (stages.isPresent()) {
            stages.orElseThrow().close();
        }
        if (shapes.isPresent()) {
            shapes.orElseThrow().close();
        }
    }

    /** Frees everything. */
    @Override
    public void close() throws IOException {
        release();
        cycles.close();
    }
}
