// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.Optional;
import org.dutywright.pulse.InputThresholds;
import org.dutywright.pulse.PulseSettings;

/**
 * One more pass over a channel whose pulses are known: what the samples between the edges show. In one pass and constant
 * memory.
 */
final class ShapePass {
    /** A region of an edge that is faster than the samples still has so many. */
    private static final int LEAST_SAMPLES = 4;

    private final SpillLog.Reader<Pulse> pulses;
    private final LevelTrack.Walk walk;
    private final double region;
    private final InputWatch input;
    private final ShapeLog log;

    private ChannelBlocks blocks;
    private Pulse pulse;
    private Pulse following;
    private Shape shape = new Shape();
    private double headEndSeconds;
    private double tailStartSeconds;

    private boolean hasPrevious;
    private double previous;
    private double previousSeconds;

    /** From here on the way to the next sample is not yet taken into a pulse. */
    private double fromSeconds;

    private double from;
    /** Where on this way the input changes, NaN if it does not. */
    private double changedSeconds;

    private ShapePass(
            PulseLog log, LevelTrack levels, PulseSettings settings, Optional<InputThresholds> input, ShapeLog target)
            throws IOException {
        pulses = log.reader(2);
        walk = levels.walk();
        // half a duration from the 50 % instant to the end of the transition, then the region
        region = settings.get(PulseSettings.ABERRATION) + 0.5;
        this.input = new InputWatch(input);
        this.log = target;
        following = pulses.next();
    }

    /** Reads the channel once. */
    static ShapeLog run(
            ChannelSource source,
            PulseLog pulses,
            LevelTrack levels,
            PulseSettings settings,
            Optional<InputThresholds> input)
            throws IOException {
        ShapeLog log = new ShapeLog();
        try {
            new ShapePass(pulses, levels, settings, input, log).run(source.open());
            return log;
        } catch (IOException | RuntimeException e) {
            log.close();
            throw e;
        }
    }

    private void run(ChannelBlocks channel) throws IOException {
        blocks = channel;
        advance();
        while (channel.next()) {
            if (channel.segmentStart()) {
                hasPrevious = false;
                input.reset();
            }
            int i = 0;
            while (i < channel.count() && pulse != null) {
                i = quiet(i);
                if (i < channel.count()) {
                    while (walk.nextSample() <= channel.firstSample() + i) {
                        walk.advance();
                    }
                    sample(channel.seconds(i), channel.values()[i]);
                    i++;
                }
            }
        }
        while (pulse != null) {
            finish();
        }
    }

    // The hot part: between the regions of its edges a pulse shows its squares only. Returns the index after these
    // samples.
    private int quiet(int i) {
        double until = Math.min(tailStartSeconds, pulse.endSeconds);
        boolean calm = hasPrevious && !input.isKnown() && previousSeconds > headEndSeconds;
        int to = calm && blocks.seconds(i) < until ? blocks.firstFrom(until, i) : i;
        if (to > i) {
            shape.squares += blocks.integralOfSquares(previous, i, to);
            previous = blocks.values()[to - 1];
            previousSeconds = blocks.seconds(to - 1);
        }
        return to;
    }

    private void advance() throws IOException {
        pulse = following;
        following = pulse == null ? null : pulses.next();
        if (pulse != null) {
            double middle = pulse.startSeconds + pulse.seconds() / 2;
            headEndSeconds =
                    pulse.startsWithEdge ? Math.min(middle, pulse.startSeconds + reach(pulse)) : pulse.startSeconds;
            boolean edge = pulse.endsWithEdge && following != null;
            tailStartSeconds = edge ? Math.max(middle, pulse.endSeconds - reach(following)) : pulse.endSeconds;
        }
    }

    private double reach(Pulse intoIt) {
        double least = LEAST_SAMPLES * blocks.typicalStep();
        double seconds = region * intoIt.edgeSeconds;
        return seconds >= least ? seconds : least;
    }

    private void finish() throws IOException {
        input.finish(shape);
        log.add(shape);
        shape = new Shape();
        advance();
    }

    private void sample(double seconds, double value) throws IOException {
        if (input.isKnown()) {
            input.follow(seconds, value);
        }
        double share = input.isKnown() ? input.change(previous, value) : Double.NaN;
        changedSeconds = hasPrevious ? previousSeconds + share * (seconds - previousSeconds) : Double.NaN;
        fromSeconds = previousSeconds;
        from = previous;
        while (pulse != null && seconds > pulse.endSeconds) {
            leave(seconds, value);
        }
        if (pulse != null) {
            changedBefore(seconds, seconds, value);
            if (seconds >= pulse.startSeconds) {
                inPulse(seconds, value);
            }
        }
        previous = value;
        previousSeconds = seconds;
        hasPrevious = true;
    }

    /** The pulse ends on the way to a sample. */
    private void leave(double seconds, double value) throws IOException {
        if (hasPrevious && pulse.endSeconds > fromSeconds) {
            double part = (pulse.endSeconds - fromSeconds) / (seconds - fromSeconds);
            double atEnd = from + part * (value - from);
            integrate(pulse.endSeconds, atEnd);
            fromSeconds = pulse.endSeconds;
            from = atEnd;
        }
        changedBefore(pulse.endSeconds, seconds, value);
        shape.tail.follow(beyond(value));
        finish();
    }

    private void changedBefore(double endSeconds, double seconds, double value) {
        if (changedSeconds <= endSeconds) {
            input.within(pulse.high, changedSeconds, (seconds - previousSeconds) / Math.abs(value - previous));
            changedSeconds = Double.NaN;
        }
    }

    private void inPulse(double seconds, double value) {
        double neighbour = beyond(hasPrevious ? previous : value);
        if (hasPrevious) {
            integrate(seconds, value);
        }
        if (seconds <= headEndSeconds) {
            shape.head.add(beyond(value), neighbour);
        } else {
            shape.head.follow(beyond(value));
        }
        if (seconds >= tailStartSeconds && tailStartSeconds < pulse.endSeconds) {
            shape.tail.add(beyond(value), neighbour);
        }
    }

    // of a straight line, exactly
    private void integrate(double toSeconds, double to) {
        double start = pulse.startSeconds;
        if (fromSeconds >= start) {
            shape.squares += (toSeconds - fromSeconds) * (from * from + from * to + to * to) / 3;
        } else if (toSeconds > start) {
            double there = from + (start - fromSeconds) / (toSeconds - fromSeconds) * (to - from);
            shape.squares += (toSeconds - start) * (there * there + there * to + to * to) / 3;
        }
    }

    private double beyond(double value) {
        return pulse.high ? value - walk.now().high() : walk.now().low() - value;
    }
}
