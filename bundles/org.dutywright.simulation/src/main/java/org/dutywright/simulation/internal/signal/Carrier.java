// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.Fault;
import org.dutywright.simulation.Scenario;

/**
 * The transitions of one channel's pulse generator, cycle by cycle: its own frequency, phase and jitter, the duty
 * that the travel asks for at the start of each cycle, and the faults that sit in the generator itself (frequency,
 * ratio, worn spot, loss of supply).
 */
final class Carrier implements EdgeSource {

    /** Cycles made before the recording starts, so that slow edges have settled. */
    private static final int CYCLES_BEFORE = 3;

    /** Jitter is cut off here: an edge further out than this would be a fault, not jitter. */
    private static final double JITTER_LIMIT_SIGMAS = 4.5;

    private final ChannelModel channel;
    private final Scenario scenario;
    private final double endSeconds;
    private final double edgeJitterSeconds;
    private final RandomGenerator random;
    private final SignalTruth truth;
    private final ActiveSpans<Fault.Frequency> frequencyFaults;
    private final ActiveSpans<Fault.Ratio> ratioFaults;
    private final ActiveSpans<Fault.DutyJump> dutyJumps;
    private final Deque<Fault.SupplyLoss> losses = new ArrayDeque<>();
    private final Deque<Edge> ready = new ArrayDeque<>();

    /** Cycle n after the anchor starts at anchor + n / f: no rounding adds up over an hour. */
    private double anchorSeconds;

    private long cyclesSinceAnchor;
    private double frequencyHz;
    private OptionalDouble oddPeriodSeconds = OptionalDouble.empty();
    private double lastEdgeSeconds = Double.NEGATIVE_INFINITY;
    private boolean active;
    private boolean restarted;

    Carrier(Scenario scenario, ChannelModel channel, SignalTruth truth) {
        this.scenario = scenario;
        this.channel = channel;
        this.truth = truth;
        double start = scenario.recording().startSeconds();
        List<Fault> faults = scenario.faultsOf(channel.name());
        this.endSeconds = scenario.recording().endSeconds();
        this.edgeJitterSeconds = channel.jitterSeconds() / Math.sqrt(2);
        this.random = Randomness.of(scenario.seed(), channel.name(), "jitter", 0);
        this.frequencyFaults = ActiveSpans.of(Fault.Frequency.class, faults, start);
        this.ratioFaults = ActiveSpans.of(Fault.Ratio.class, faults, start);
        this.dutyJumps = ActiveSpans.of(Fault.DutyJump.class, faults, start);
        faults.stream()
                .filter(Fault.SupplyLoss.class::isInstance)
                .map(Fault.SupplyLoss.class::cast)
                .sorted(Comparator.comparingDouble(Fault.SupplyLoss::startSeconds))
                .forEach(losses::add);
        this.frequencyHz = frequencyAt(Double.NEGATIVE_INFINITY);
        this.anchorSeconds = start - (channel.phasePercent() / 100 + CYCLES_BEFORE) / frequencyHz;
    }

    @Override
    public Edge next() {
        while (ready.isEmpty()) {
            double start = anchorSeconds + cyclesSinceAnchor / frequencyHz;
            if (start > endSeconds + 1 / frequencyHz) {
                return Edge.NEVER;
            }
            makeCycle(start);
        }
        return ready.remove();
    }

    private void makeCycle(double start) {
        double wanted = frequencyAt(start);
        if (wanted != frequencyHz) {
            restartAt(start);
            frequencyHz = wanted;
        }
        double period = oddPeriodSeconds.orElse(1 / frequencyHz);
        boolean cut = !losses.isEmpty() && losses.element().startSeconds() < start + period;
        makePulse(start, period, cut ? losses.element().startSeconds() : Double.POSITIVE_INFINITY);
        if (cut) {
            loseSupply(losses.remove());
        } else if (oddPeriodSeconds.isPresent()) {
            // Odd by intent: it would falsify the truth about the frequency.
            truth.phaseBreaks();
            restartAt(start + period);
            oddPeriodSeconds = OptionalDouble.empty();
        } else {
            cyclesSinceAnchor++;
        }
    }

    private void makePulse(double start, double period, double cutSeconds) {
        double dutyPercent = dutyAt(start);
        double firstJitter = jitter();
        // The first edge after a loss of supply ends that loss, exactly where the scenario says.
        double begin = restarted ? start : start + firstJitter;
        double end = start + dutyPercent / 100 * period + jitter();
        restarted = false;
        if (begin < cutSeconds && dutyPercent > 0) {
            emit(begin, true);
            truth.cycleStarts(begin, dutyPercent);
        }
        if (end < cutSeconds && dutyPercent < 100) {
            emit(end, false);
        }
    }

    private void loseSupply(Fault.SupplyLoss loss) {
        truth.phaseBreaks();
        // Nobody sees this edge: the level stands elsewhere from the loss to the restart.
        emit((loss.startSeconds() + loss.firstEdgeSeconds()) / 2, false);
        restartAt(loss.firstEdgeSeconds());
        restarted = true;
        oddPeriodSeconds = loss.firstPeriodSeconds();
        long absent = (long) Math.floor((loss.firstEdgeSeconds() - loss.startSeconds()) * frequencyHz);
        truth.happened(
                new Happening(loss, loss.startSeconds(), loss.firstEdgeSeconds(), Happening.eventForAbsent(absent)));
    }

    private void restartAt(double seconds) {
        anchorSeconds = seconds;
        cyclesSinceAnchor = 0;
    }

    private void emit(double seconds, boolean intoActive) {
        if (intoActive != active) {
            active = intoActive;
            lastEdgeSeconds = Math.max(lastEdgeSeconds, seconds);
            ready.add(Edge.whole(lastEdgeSeconds, intoActive == channel.activeHigh()));
        }
    }

    /** Always one draw an edge, so that no fault changes the jitter elsewhere. */
    private double jitter() {
        double sigmas = random.nextGaussian();
        return edgeJitterSeconds * Math.clamp(sigmas, -JITTER_LIMIT_SIGMAS, JITTER_LIMIT_SIGMAS);
    }

    private double frequencyAt(double seconds) {
        double hertz = channel.carrierHz();
        for (Span<Fault.Frequency> span : frequencyFaults.at(seconds)) {
            hertz *= span.what().factor();
        }
        return hertz;
    }

    private double dutyAt(double seconds) {
        double travel = scenario.travel().at(seconds);
        double duty = channel.duty().dutyPercent(seconds, travel);
        for (Span<Fault.Ratio> span : ratioFaults.at(seconds)) {
            duty = span.what().gain() * duty + span.what().offsetPercent();
        }
        for (Span<Fault.DutyJump> span : dutyJumps.at(seconds)) {
            Fault.DutyJump spot = span.what();
            if (Math.abs(travel - spot.travelPercent()) <= spot.widthPercent() / 2) {
                duty += spot.offsetPercent();
            }
        }
        return Math.clamp(duty, 0, 100);
    }
}
