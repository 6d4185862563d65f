// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.Optional;
import org.dutywright.pulse.PulseSettings;

/**
 * The levels at which the edge finder acts, over the recording. They are those of the whole recording unless a level
 * drifts ({@link LevelDrift}) or droops within pulses ({@link Droop}). Then each transition has its own: the level at
 * the end of the pulse before it and at the start of the pulse after it, from the levels tracked pulse by pulse, and
 * from the middle of a pulse on those of the transition at its end hold. Constant memory.
 */
final class LevelTrack implements AutoCloseable {
    /** Tracked levels nearer than this share of the recording's swing are no states: what held before goes on. */
    private static final double LEAST_SWING = 0.25;

    private final Thresholds whole;
    private final double lowNoise;
    private final double highNoise;
    private final PulseSettings settings;
    private final Optional<RecordSpill> changes;

    private LevelTrack(
            Thresholds whole,
            double lowNoise,
            double highNoise,
            PulseSettings settings,
            Optional<RecordSpill> changes) {
        this.whole = whole;
        this.lowNoise = lowNoise;
        this.highNoise = highNoise;
        this.settings = settings;
        this.changes = changes;
    }

    /** Levels that do not move. */
    static LevelTrack constant(Thresholds levels, PulseSettings settings) {
        return new LevelTrack(levels, 0, 0, settings, Optional.empty());
    }

    /**
     * Levels that move as written down.
     *
     * @param whole those of the whole recording
     * @param noise standard deviation of the noise in both states
     * @param changes first sample, low level and high level of each change, in order; belongs to the track from now on
     */
    static LevelTrack along(Thresholds whole, double noise, PulseSettings settings, RecordSpill changes) {
        return new LevelTrack(whole, noise, noise, settings, Optional.of(changes));
    }

    /**
     * The levels of a channel.
     *
     * @param log what its pulses told
     * @param states the levels of the whole recording
     */
    static LevelTrack of(LevelLog log, States states, PulseSettings settings) throws IOException {
        LevelDrift low = LevelDrift.of(log, false, states, settings);
        LevelDrift high = LevelDrift.of(log, true, states, settings);
        double droopFrom = settings.get(PulseSettings.DROOP_FROM) / 100;
        boolean lowDroops = states.droop().isAbove(false, droopFrom);
        boolean highDroops = states.droop().isAbove(true, droopFrom);
        if (!low.moves() && !high.moves() && !lowDroops && !highDroops) {
            return constant(states.thresholds(), settings);
        }
        RecordSpill changes = new RecordSpill(TrackWriter.WIDTH);
        LevelTrack track = new LevelTrack(
                states.thresholds(),
                states.levels().lowNoise(),
                states.levels().highNoise(),
                settings,
                Optional.of(changes));
        try {
            new TrackWriter(log, states.thresholds(), low, high, lowDroops, highDroops, changes).write();
            return track;
        } catch (IOException | RuntimeException e) {
            track.close();
            throw e;
        }
    }

    /** Those of the whole recording. */
    Thresholds whole() {
        return whole;
    }

    /** Whether the levels move. */
    boolean moves() {
        return changes.isPresent();
    }

    /** Starts at the first sample. */
    Walk walk() throws IOException {
        return new Walk();
    }

    @Override
    public void close() throws IOException {
        if (changes.isPresent()) {
            changes.orElseThrow().close();
        }
    }

    /** Walks along the levels. */
    final class Walk {
        private final RecordSpill.Cursor cursor =
                changes.map(RecordSpill::cursor).orElse(null);
        private final double[] record = new double[TrackWriter.WIDTH];
        private Thresholds now = whole;
        private long read;
        private long nextSample = Long.MAX_VALUE;

        private Walk() throws IOException {
            load();
            if (nextSample == 0) {
                advance();
            }
        }

        private void load() throws IOException {
            if (cursor == null || read == changes.orElseThrow().size()) {
                nextSample = Long.MAX_VALUE;
            } else {
                cursor.read(read++, record);
                nextSample = (long) record[0];
            }
        }

        /** The levels that hold now. */
        Thresholds now() {
            return now;
        }

        /** First sample of the capture at which others hold. */
        long nextSample() {
            return nextSample;
        }

        /** Goes on to the next levels. */
        void advance() throws IOException {
            if (record[2] - record[1] > LEAST_SWING * whole.swing()) {
                now = Thresholds.of(record[1], record[2], lowNoise, highNoise, settings);
            }
            load();
        }
    }
}
