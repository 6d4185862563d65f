// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.dutywright.capture.Segment;

/**
 * How a simulated signal is recorded and written.
 *
 * @param sampleRateHz samples a second
 * @param startSeconds instant of the first sample; may be negative
 * @param durationSeconds length of the recording
 * @param quantisation steps of the converter, empty for none
 * @param pauses stretches in which nothing is recorded, in order, not overlapping
 * @param format how the values are written
 */
public record Recording(
        double sampleRateHz,
        double startSeconds,
        double durationSeconds,
        Optional<Quantisation> quantisation,
        List<Pause> pauses,
        Format format) {

    /** The largest number of sample instants of a recording. */
    public static final double MAX_SAMPLES = 2e11;

    /** A stretch in which nothing is recorded: the first instant belongs to it, the second does not. */
    public record Pause(double startSeconds, double endSeconds) {}

    /**
     * How the values are written.
     *
     * @param timeColumn whether there is a column with the instants
     * @param timeUnit "s", "ms" or "us"
     * @param valueUnit "V" or "mV"
     * @param decimals decimals of the values, empty for as many as the quantisation step needs
     */
    public record Format(boolean timeColumn, String timeUnit, String valueUnit, OptionalInt decimals) {
        /** Seconds and volts with a time column. */
        public static Format standard() {
            return new Format(true, "s", "V", OptionalInt.empty());
        }
    }

    /** Copies its arguments. */
    public Recording {
        pauses = List.copyOf(pauses);
    }

    /** The end of the recording: one step after its last sample. */
    public double endSeconds() {
        return startSeconds + durationSeconds;
    }

    /** Number of sample instants, those in pauses included. */
    public long instants() {
        return Math.round(durationSeconds * sampleRateHz);
    }

    /** Instant of a sample; the index counts the instants in pauses too. */
    public double secondsAt(long instant) {
        return startSeconds + instant / sampleRateHz;
    }

    /** The runs of recorded samples; their {@code startSeconds} tells the instant of the first one. */
    public List<Segment> segments() {
        List<Segment> segments = new ArrayList<>();
        long row = 0;
        long instant = 0;
        for (Pause pause : pauses) {
            long pauseStart = firstInstantFrom(pause.startSeconds());
            if (pauseStart > instant) {
                segments.add(new Segment(row, pauseStart - instant, secondsAt(instant)));
                row += pauseStart - instant;
            }
            instant = Math.max(instant, firstInstantFrom(pause.endSeconds()));
        }
        if (instants() > instant) {
            segments.add(new Segment(row, instants() - instant, secondsAt(instant)));
        }
        return segments;
    }

    /** Index of the sample instant at a segment's start. */
    public long instantOf(Segment segment) {
        return Math.round((segment.startSeconds() - startSeconds) * sampleRateHz);
    }

    private long firstInstantFrom(double seconds) {
        // A millionth of a step of slack: 0.3 s at 100 kHz must be sample 30000 whatever the rounding.
        long first = (long) Math.ceil((seconds - startSeconds) * sampleRateHz - 1e-6);
        return Math.min(Math.max(first, 0), instants());
    }
}
