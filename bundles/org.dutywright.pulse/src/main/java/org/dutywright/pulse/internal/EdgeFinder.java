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
    private final LevelTrack track;
    private LevelTrack.Walk walk;
    private Thresholds levels;
    private StateSide low;
    private StateSide high;
    private final PulseSink sink;
    private final TransitionTimer timer = new TransitionTimer();
    private final EdgeCore core = new EdgeCore();
    private final Stay stay;
    private final EdgeInstant instant;

    private ChannelBlocks blocks;
    private double[] values;
    private double before;

    /** The state that the signal is in; null before a segment told it. */
    private StateSide side;

    private Pulse current;
    private Pulse ending;
    private double area;
    private double furthest;
    private double crossingSlope = Double.NaN;

    EdgeFinder(LevelTrack track, PulseSettings settings, PulseSink sink) {
        this.track = track;
        this.sink = sink;
        instant = new EdgeInstant((int) Math.round(settings.get(PulseSettings.FIT_SAMPLES)));
        stay = new Stay(sink, timer, settings);
    }

    /** Runs over all blocks of a channel. */
    void run(ChannelBlocks channel) throws IOException {
        blocks = channel;
        walk = track.walk();
        follow();
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
        int from = 0;
        while (from < count) {
            while (walk.nextSample() <= blocks.firstSample() + from) {
                walk.advance();
                follow();
            }
            int to = (int) Math.min(count, walk.nextSample() - blocks.firstSample());
            part(from, to);
            from = to;
        }
        before = values[count - 1];
    }

    private void follow() {
        levels = walk.now();
        low = StateSide.of(levels, false);
        high = StateSide.of(levels, true);
        if (side != null) {
            side = side.high() ? high : low;
            stay.follow(side);
        }
    }

    private void part(int from, int count) throws IOException {
        int i = side == null ? firstState(from, count) : from;
        while (i < count) {
            int to = stay.settled() && !timer.underWay() ? endOfHome(i, count) : i;
            if (to > i) {
                stayedHome(i, to);
                i = to;
            }
            if (i < count) {
                step(i++);
            }
        }
    }

    /** Looks for the first sample that tells the state; returns the index after it. */
    private int firstState(int from, int count) {
        for (int i = from; i < count; i++) {
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
        current.startSample = blocks.firstSample() + i;
        current.samples = 1;
        ending = null;
        area = 0;
        stay.settle();
        timer.reset();
        instant.atHome();
        core.reset();
        stay.first(values, i);
        before = values[i];
    }

    private void enter(StateSide next, Pulse pulse, double value) {
        side = next;
        current = pulse;
        current.high = next.high();
        furthest = next.sign() * value;
        stay.begin(next, pulse.startsWithEdge || furthest <= next.near());
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
        stay.home(blocks, from, to, side.sign() * previous);
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
            crossingSlope = Math.abs(value - previous) / blocks.stepBefore(i);
            instant.crossed(seconds, areaThere);
            timer.crossedMiddle();
        } else if (ending != null) {
            // still the transition that led here: noise took the signal back across the level for a while
            instant.crossedBack(seconds, areaThere);
        }
    }

    private void flip(int i, double previous, double value) throws IOException {
        release();
        stay.end(current);
        current.extreme = side.sign() * furthest;
        current.expected = side.sign() * side.level();
        current.endsWithEdge = true;
        boolean offLevel = side.hasMoved(current);
        if (offLevel) {
            current.edgeSeconds = Double.NaN;
        }
        ending = current;
        instant.flipped();

        Pulse next = new Pulse();
        next.startsWithEdge = true;
        next.startSample = blocks.firstSample() + i;
        current.endSample = next.startSample;
        next.edgeSlope = crossingSlope;
        enter(side.high() ? low : high, next, value);
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
            stay.settle();
            release();
        }
        if (stay.settled()) {
            stay.sample(blocks, i, px, x, current);
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
        stay.arrived(current, blocks.typicalStep());
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
        stay.endSegment(current);
        current.extreme = side.sign() * furthest;
        current.expected = side.sign() * side.level();
        current.endSeconds = blocks.seconds(last);
        current.endSample = blocks.firstSample() + last + 1;
        current.area = area;
        sink.pulse(current);
        sink.segmentEnd();
    }
}
