// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.PulseSettings;

/**
 * Finds the transitions of a signal with two states, with hysteresis, in one pass and constant memory.
 *
 * <p>A state is left when a sample reaches the 50 % level plus the half-width of the hysteresis on the far side. The
 * instant of the transition is interpolated between the samples that straddle the 50 % level; see {@link Edge} for
 * several crossings. Its duration runs from the last crossing of the starting reference level before to the first
 * crossing of the ending one after. A segment starts without a state: the first sample beyond the hysteresis tells it.
 *
 * <p>All levels are handled with a sign such that the current state is below and the other one above; so one piece of
 * code serves both directions.
 */
final class EdgeFinder {
    /**
     * The two parts of a transition, up to its trigger and from there on, differ by no more than this factor in samples; a
     * signal that dwells between the reference levels for longer does so for another reason.
     */
    private static final int MOST_UNEQUAL = 8;

    private static final int LEAST_SETTLE = 4;

    /** A level that has shifted by less than this share of the swing still tells the level of its pulse. */
    private static final double FAR = 0.25;

    /** The duration of a transition is only told where both states are this near their levels, as a share of the swing. */
    private static final double MOST_OFF = 0.05;

    private static final double MOST_OFF_SETTLED = 0.07;

    private final Thresholds levels;
    private final PulseSink sink;
    private final double aberration;
    private final Plateau plateau = new Plateau();
    private final ExcursionWatch excursions;
    private final Edge departure = new Edge();
    private final Edge arrival = new Edge();
    /** Recent durations in samples of transitions into the low (0) and the high (1) state. */
    private final double[] usual = new double[2];

    private ChannelBlocks blocks;
    private double[] values;
    private double before;

    private int sign;
    private double home;
    private double near;
    private double middle;
    private double trigger;

    private Pulse current;
    private Pulse ending;
    private double area;
    private boolean underWay;
    private boolean settled;
    private long sinceTrigger;
    private double settleAfter;
    private double giveUpAfter;
    private int samplesToTrigger;
    private double departedSeconds;
    private double edgeStartSeconds;
    private int edgeSamples;
    private int arrivedEdgeSamples;
    private double furthest;
    /** A sample beyond this level, with the sign, is on its way to the other state or a runt, not noise. */
    private double farOff;

    private boolean far;

    EdgeFinder(Thresholds levels, PulseSettings settings, PulseSink sink) {
        this.levels = levels;
        this.sink = sink;
        aberration = settings.get(PulseSettings.ABERRATION);
        excursions = new ExcursionWatch(sink, plateau, settings);
    }

    /** Runs over all blocks of a channel. */
    void run(ChannelBlocks channel) throws IOException {
        blocks = channel;
        while (channel.next()) {
            values = channel.values();
            if (channel.segmentStart()) {
                sign = 0;
            }
            block(channel.count());
            if (channel.segmentEnd()) {
                endSegment(channel.count() - 1);
            }
        }
    }

    private void block(int count) throws IOException {
        int i = sign == 0 ? firstState(count) : 0;
        while (i < count) {
            int to = settled && !underWay ? endOfHome(i, count) : i;
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
            boolean high = values[i] >= levels.middle() + levels.hysteresis();
            if (high || values[i] <= levels.middle() - levels.hysteresis()) {
                enter(high);
                current = new Pulse();
                current.high = high;
                current.startSeconds = blocks.seconds(i);
                current.samples = 1;
                ending = null;
                area = 0;
                underWay = false;
                settled = true;
                departedSeconds = Double.NaN;
                edgeSamples = 0;
                furthest = sign * values[i];
                departure.clear();
                startPlateau(0);
                if (furthest <= home) {
                    plateau.add(values, i, i + 1);
                }
                before = values[i];
                return i + 1;
            }
        }
        return count;
    }

    private void enter(boolean high) {
        sign = high ? -1 : 1;
        home = high ? -levels.upper() : levels.lower();
        double leave = high ? levels.highLeave() - levels.high() : levels.low() + levels.lowLeave();
        near = Math.min(home, leave);
        farOff = Math.max(leave, sign * (high ? levels.high() : levels.low()) + FAR * levels.swing());
        far = false;
        middle = sign * levels.middle();
        trigger = middle + levels.hysteresis();
        excursions.start(high, sign, sign * (high ? levels.high() : levels.low()), leave);
    }

    // The tail is held back by what the last transition out of this state needed; before one was seen, by much.
    private void startPlateau(long head) {
        double leaving = usual[current.high ? 0 : 1];
        long tail = leaving == 0 ? Plateau.MOST_HELD : leaving < 1.5 ? 1 : (long) Math.ceil(aberration * leaving) + 1;
        plateau.start(head, tail, current.high ? levels.high() : levels.low());
    }

    // The hot loop: nothing happens as long as samples are within the near side of their state.
    private int endOfHome(int from, int count) {
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
        departure.clear();
        double previous = from > 0 ? values[from - 1] : before;
        area += blocks.integral(previous, from, to);
        cameHome();
        plateau.add(values, from, to);
        excursions.quiet(blocks, from, to, sign * previous);
        current.samples += to - from;
    }

    private void cameHome() {
        if (far) {
            plateau.dropAway();
        } else {
            plateau.keepAway();
        }
        far = false;
    }

    private void step(int i) throws IOException {
        double previous = i > 0 ? values[i - 1] : before;
        double value = values[i];
        double x = sign * value;
        double px = sign * previous;
        if (px <= home && x > home) {
            departedSeconds = blocks.secondsBefore(i, (home - px) / (x - px));
            edgeSamples = 0;
        }
        if ((px < middle) != (x < middle)) {
            crossed(i, previous, value, x >= middle);
        }
        if (x >= trigger) {
            flip(i, previous, value);
        } else {
            inState(i, px, x);
        }
        area += (previous + value) / 2 * blocks.stepBefore(i);
        current.samples++;
    }

    private void crossed(int i, double previous, double value, boolean away) throws IOException {
        double share = (levels.middle() - previous) / (value - previous);
        double seconds = blocks.secondsBefore(i, share);
        double areaThere = area + (previous + share / 2 * (value - previous)) * share * blocks.stepBefore(i);
        if (away) {
            departure.add(seconds, areaThere);
        } else if (ending != null) {
            // still the transition that led here: noise took the signal back across the level for a while
            arrival.add(seconds, areaThere);
            departure.clear();
        }
    }

    private void flip(int i, double previous, double value) throws IOException {
        release();
        excursions.cancel();
        plateau.dropAway();
        plateau.finish(current);
        current.extreme = sign * furthest;
        current.endsWithEdge = true;
        boolean offLevel = offLevel();
        if (offLevel) {
            current.edgeSeconds = Double.NaN;
        }
        ending = current;
        arrival.set(departure);
        departure.clear();

        current = new Pulse();
        current.high = !ending.high;
        current.startsWithEdge = true;
        enter(current.high);
        furthest = sign * value;
        underWay = true;
        settled = false;
        sinceTrigger = 0;
        double expected = usual[current.high ? 1 : 0];
        giveUpAfter = MOST_UNEQUAL * (edgeSamples + 1.0);
        settleAfter = expected > 0 ? Math.clamp(3 * expected, LEAST_SETTLE, giveUpAfter) : giveUpAfter;
        startPlateau(0);
        samplesToTrigger = edgeSamples;
        arrivedEdgeSamples = edgeSamples;
        edgeStartSeconds = offLevel ? Double.NaN : departedSeconds;
        departedSeconds = Double.NaN;
        double px = sign * previous;
        if (furthest <= home) {
            arrive(blocks.secondsBefore(i, (home - px) / (furthest - px)));
        } else {
            arrivedEdgeSamples++;
        }
    }

    // Near a reference level, where a shifted state may lie, noise decides when the signal passes it. Samples close to
    // a
    // slow edge lie off the level as well, so they tell it only where they are more than those on the edge.
    private boolean offLevel() {
        double level = sign * (current.high ? levels.high() : levels.low());
        if (current.plateauSamples > 0) {
            return sign * current.plateau - level > MOST_OFF * levels.swing();
        }
        return current.settledSamples > current.edgeSamples
                && sign * current.settled - level > MOST_OFF_SETTLED * levels.swing();
    }

    private void inState(int i, double px, double x) throws IOException {
        furthest = x < furthest ? x : furthest;
        if (x <= home) {
            if (underWay) {
                arrive(blocks.secondsBefore(i, (home - px) / (x - px)));
            }
            departure.clear();
        } else {
            edgeSamples++;
            arrivedEdgeSamples++;
        }
        if (underWay) {
            sinceTrigger++;
            if (!settled && sinceTrigger >= settleAfter) {
                settled = true;
                int direction = current.high ? 1 : 0;
                usual[direction] = Math.max(usual[direction], 2.0 * (samplesToTrigger + 1));
                release();
            }
            if (sinceTrigger >= giveUpAfter) {
                // the signal stays short of the reference level: what comes later is no part of the transition
                edgeStartSeconds = Double.NaN;
            }
        }
        if (!settled) {
            return;
        }
        if (underWay || x <= home) {
            cameHome();
            plateau.add(values, i, i + 1);
        } else if (far || x > farOff) {
            far = true;
            plateau.dropAway();
        } else {
            plateau.addAway(values[i], Math.max(usual[current.high ? 0 : 1], current.samples / 2.0));
        }
        if (underWay || plateau.skipping()) {
            excursions.cancel();
        } else {
            excursions.sample(blocks, i, px, x, current);
        }
    }

    /** The transition reached the ending reference level. */
    private void arrive(double seconds) throws IOException {
        underWay = false;
        boolean dwelt = samplesToTrigger > MOST_UNEQUAL * (sinceTrigger + 1);
        current.edgeSeconds = dwelt ? Double.NaN : seconds - edgeStartSeconds;
        current.edgeSamples = arrivedEdgeSamples;
        if (current.edgeSeconds >= 0) {
            int direction = current.high ? 1 : 0;
            double samples = current.edgeSeconds / blocks.typicalStep();
            usual[direction] = Math.max(samples, 0.75 * usual[direction]);
            excursions.longestEdge(usual);
        }
        release();
        if (settled) {
            // it was called settled while it was still on its way: those samples are no plateau
            startPlateau(0);
        }
        settled = true;
        // an edge faster than the samples: the one that showed it counts as its aberration
        boolean resolved = current.edgeSamples > 0 && current.edgeSeconds >= 0;
        plateau.skip(resolved ? (long) Math.ceil(aberration * current.edgeSeconds / blocks.typicalStep()) : 0);
    }

    /** No more crossings can belong to the transition into the current state: the pulse before it is complete. */
    private void release() throws IOException {
        if (ending == null) {
            return;
        }
        double instant = arrival.seconds();
        current.startSeconds = instant;
        ending.endSeconds = instant;
        ending.area = arrival.area();
        area -= arrival.area();
        Pulse complete = ending;
        ending = null;
        sink.pulse(complete);
    }

    private void endSegment(int last) throws IOException {
        if (sign == 0) {
            return;
        }
        release();
        excursions.finish();
        plateau.finish(current);
        current.extreme = sign * furthest;
        current.endSeconds = blocks.seconds(last);
        current.area = area;
        sink.pulse(current);
        sink.segmentEnd();
        current = null;
    }
}
