// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.PulseSettings;

/**
 * Finds the transitions of a signal with two states, with hysteresis, in one pass and constant memory.
 *
 * <p>A state is left when a sample reaches the 50 % level plus the half-width of the hysteresis on the far side. The
 * instant of the transition is fitted ({@link EdgeFit}) or, with few samples on it, interpolated between the samples
 * that straddle the 50 % level; see {@link Edge} for several crossings. Its duration runs from the last crossing of the starting reference level before to the first
 * crossing of the ending one after. A segment starts without a state: the first sample beyond the hysteresis tells it.
 */
final class EdgeFinder {
    private final Thresholds levels;
    private final StateSide low;
    private final StateSide high;
    private final PulseSink sink;
    private final Plateau plateau = new Plateau();
    private final Margins margins;
    private final TransitionTimer timer = new TransitionTimer();
    private final EdgeCore core = new EdgeCore();
    private final ExcursionWatch excursions;
    private final EdgeInstant instant;

    private ChannelBlocks blocks;
    private double[] values;
    private double before;

    /** The state that the signal is in; null before a segment told it. */
    private StateSide side;

    private Pulse current;
    private Pulse ending;
    private double area;
    private boolean settled;
    private double furthest;

    EdgeFinder(Thresholds levels, PulseSettings settings, PulseSink sink) {
        this.levels = levels;
        low = StateSide.of(levels, false);
        high = StateSide.of(levels, true);
        this.sink = sink;
        margins = new Margins(settings.get(PulseSettings.ABERRATION));
        instant = new EdgeInstant((int) Math.round(settings.get(PulseSettings.FIT_SAMPLES)));
        excursions = new ExcursionWatch(sink, plateau, timer, settings);
    }

    /** Runs over all blocks of a channel. */
    void run(ChannelBlocks channel) throws IOException {
        blocks = channel;
        while (channel.next()) {
            values = channel.values();
            if (channel.segmentStart()) {
                side = null;
            }
            block(channel.count());
            if (channel.segmentEnd()) {
                endSegment(channel.count() - 1);
            }
        }
    }

    private void block(int count) throws IOException {
        int i = side == null ? firstState(count) : 0;
        while (i < count) {
            int to = settled && !timer.underWay() ? endOfHome(i, count) : i;
            if (to > i) {
                stayedHome(i, to);
                i = to;
            }
            if (i < count) {
                step(i++);
            }
        }
        before = values[count - 1];
    }

    /** Looks for the first sample that tells the state; returns the index after it. */
    private int firstState(int count) {
        for (int i = 0; i < count; i++) {
            boolean isHigh = values[i] >= levels.middle() + levels.hysteresis();
            if (isHigh || values[i] <= levels.middle() - levels.hysteresis()) {
                start(i, isHigh ? high : low);
                return i + 1;
            }
        }
        return count;
    }

    private void start(int i, StateSide first) {
        enter(first, new Pulse(), values[i]);
        current.startSeconds = blocks.seconds(i);
        current.samples = 1;
        ending = null;
        area = 0;
        settled = true;
        timer.reset();
        instant.atHome();
        core.reset();
        if (furthest <= side.home()) {
            plateau.add(values, i, i + 1);
        }
        before = values[i];
    }

    private void enter(StateSide next, Pulse pulse, double value) {
        side = next;
        current = pulse;
        current.high = next.high();
        furthest = next.sign() * value;
        excursions.start(next, pulse.startsWithEdge || furthest <= next.near());
        startPlateau();
    }

    private void startPlateau() {
        plateau.start(margins.tail(side.high(), timer.usualSamples(!side.high())), side.sign() * side.level());
    }

    // The hot loop: nothing happens as long as samples are within the near side of their state.
    private int endOfHome(int from, int count) {
        int sign = side.sign();
        double near = side.near();
        double extreme = furthest;
        int i = from;
        for (; i < count; i++) {
            double x = sign * values[i];
            if (!(x <= near)) {
                break;
            }
            extreme = x < extreme ? x : extreme;
        }
        furthest = extreme;
        return i;
    }

    private void stayedHome(int from, int to) throws IOException {
        instant.atHome();
        double previous = from > 0 ? values[from - 1] : before;
        area += blocks.integral(previous, from, to);
        plateau.cameHome();
        plateau.add(values, from, to);
        excursions.quiet(blocks, from, to, side.sign() * previous);
        current.samples += to - from;
    }

    private void step(int i) throws IOException {
        double previous = i > 0 ? values[i - 1] : before;
        double value = values[i];
        double x = side.sign() * value;
        double px = side.sign() * previous;
        if (px <= side.home() && x > side.home()) {
            timer.departed(blocks.secondsBefore(i, StateSide.share(px, x, side.home())));
            instant.departed();
        }
        if (x > side.home() || timer.underWay()) {
            instant.sample(blocks.seconds(i), value);
        }
        core.leave(blocks, i, side, px, x);
        if ((px < side.middle()) != (x < side.middle())) {
            crossed(i, previous, value, x >= side.middle());
        }
        if (x >= side.trigger()) {
            flip(i, previous, value);
        } else {
            inState(i, px, x);
        }
        area += (previous + value) / 2 * blocks.stepBefore(i);
        current.samples++;
    }

    private void crossed(int i, double previous, double value, boolean away) {
        double share = (levels.middle() - previous) / (value - previous);
        double seconds = blocks.secondsBefore(i, share);
        double areaThere = area + (previous + share / 2 * (value - previous)) * share * blocks.stepBefore(i);
        if (away) {
            instant.crossed(seconds, areaThere);
        } else if (ending != null) {
            // still the transition that led here: noise took the signal back across the level for a while
            instant.crossedBack(seconds, areaThere);
        }
    }

    private void flip(int i, double previous, double value) throws IOException {
        release();
        plateau.dropAway();
        plateau.finish(current);
        current.extreme = side.sign() * furthest;
        current.endsWithEdge = true;
        margins.pulse(current.high, current.samples);
        boolean offLevel = side.hasMoved(current);
        if (offLevel) {
            current.edgeSeconds = Double.NaN;
        }
        ending = current;
        instant.flipped();

        Pulse next = new Pulse();
        next.startsWithEdge = true;
        enter(side.high() ? low : high, next, value);
        settled = false;
        timer.triggered(next.high, offLevel);
        double px = side.sign() * previous;
        core.triggered();
        core.sample(blocks, i, side, px, furthest, current);
        if (furthest <= side.home()) {
            arrive(blocks.secondsBefore(i, StateSide.share(px, furthest, side.home())));
        } else {
            timer.between();
        }
    }

    private void inState(int i, double px, double x) throws IOException {
        core.sample(blocks, i, side, px, x, current);
        furthest = x < furthest ? x : furthest;
        if (x <= side.home()) {
            if (timer.underWay()) {
                arrive(blocks.secondsBefore(i, StateSide.share(px, x, side.home())));
            }
            instant.atHome();
        } else {
            timer.between();
        }
        if (timer.underWay() && timer.overdue()) {
            settled = true;
            release();
        }
        if (settled) {
            inPulse(i, px, x);
        }
    }

    private void inPulse(int i, double px, double x) throws IOException {
        if (timer.underWay() || x <= side.home()) {
            plateau.cameHome();
            plateau.add(values, i, i + 1);
        } else if (x > side.farOff()) {
            plateau.wentFar();
        } else {
            // what stays away for half the pulse is no edge any more: the level has moved
            plateau.addAway(values[i], Math.max(timer.usualSamples(!side.high()), current.samples / 2.0));
        }
        if (timer.underWay() || plateau.skipping()) {
            excursions.cancel();
        } else {
            excursions.sample(blocks, i, px, x, current);
        }
    }

    /** The transition reached the ending reference level. */
    private void arrive(double seconds) throws IOException {
        current.edgeSeconds = timer.arrived(seconds, blocks.typicalStep());
        current.edgeSamples = timer.samplesOnEdge();
        if (ending != null) {
            instant.arrived(current, levels.middle());
        }
        release();
        if (settled) {
            // it was called settled while it was still on its way: those samples are no plateau
            startPlateau();
        }
        settled = true;
        // of an edge faster than the samples, the one that showed it is the aberration
        if (current.edgeSamples > 0 && current.edgeSeconds >= 0) {
            double samples = current.edgeSeconds / blocks.typicalStep();
            long head = margins.head(current.high, samples);
            plateau.skip(head);
            current.nearEdges = margins.narrow(head, samples);
        }
    }

    /** No more crossings can belong to the transition into the current state: the pulse before it is complete. */
    private void release() throws IOException {
        if (ending == null) {
            return;
        }
        current.startSeconds = instant.seconds();
        ending.endSeconds = instant.seconds();
        ending.area = instant.area();
        area -= instant.area();
        Pulse complete = ending;
        ending = null;
        sink.pulse(complete);
    }

    private void endSegment(int last) throws IOException {
        if (side == null) {
            return;
        }
        release();
        excursions.finish();
        plateau.finish(current);
        current.extreme = side.sign() * furthest;
        current.endSeconds = blocks.seconds(last);
        current.area = area;
        sink.pulse(current);
        sink.segmentEnd();
    }
}
