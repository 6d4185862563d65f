// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.dutywright.simulation.Recording;

/**
 * What was really made of one channel: sums over the whole cycles of its carrier inside the recording, hidden by a
 * fault or not, and the faults that came to pass. A cycle that touches a pause of the recording, that is cut by a
 * loss of supply or that is the odd first one after it is none.
 */
public final class SignalTruth {

    private final double firstSeconds;
    private final double lastSeconds;
    private final List<Recording.Pause> pauses;
    private final List<Happening> happenings = new ArrayList<>();
    private double cycleStartSeconds = Double.NaN;
    private double cycleDutyPercent;
    private int nextPause;
    private long cycles;
    private double totalSeconds;
    private double dutySum;
    private double dutyMin = Double.POSITIVE_INFINITY;
    private double dutyMax = Double.NEGATIVE_INFINITY;

    SignalTruth(Recording recording) {
        this.firstSeconds = recording.startSeconds();
        this.lastSeconds = recording.secondsAt(recording.instants() - 1);
        this.pauses = recording.pauses();
    }

    void cycleStarts(double seconds, double dutyPercent) {
        if (cycleStartSeconds >= firstSeconds && seconds <= lastSeconds && !pausedBetween(cycleStartSeconds, seconds)) {
            cycles++;
            totalSeconds += seconds - cycleStartSeconds;
            dutySum += cycleDutyPercent;
            dutyMin = Math.min(dutyMin, cycleDutyPercent);
            dutyMax = Math.max(dutyMax, cycleDutyPercent);
        }
        cycleStartSeconds = seconds;
        cycleDutyPercent = dutyPercent;
    }

    /** The cycle under way does not end. */
    void phaseBreaks() {
        cycleStartSeconds = Double.NaN;
    }

    void happened(Happening happening) {
        happenings.add(happening);
    }

    private boolean pausedBetween(double from, double to) {
        while (nextPause < pauses.size() && pauses.get(nextPause).endSeconds() <= from) {
            nextPause++;
        }
        return nextPause < pauses.size() && pauses.get(nextPause).startSeconds() <= to;
    }

    /** Whole cycles of the carrier. */
    public long cycles() {
        return cycles;
    }

    /** Cycles divided by their total time; empty without a cycle. */
    public OptionalDouble frequencyHz() {
        return cycles == 0 ? OptionalDouble.empty() : OptionalDouble.of(cycles / totalSeconds);
    }

    /** Mean of the duties of the cycles. */
    public OptionalDouble dutyMeanPercent() {
        return cycles == 0 ? OptionalDouble.empty() : OptionalDouble.of(dutySum / cycles);
    }

    /** Smallest duty of a cycle. */
    public OptionalDouble dutyMinPercent() {
        return cycles == 0 ? OptionalDouble.empty() : OptionalDouble.of(dutyMin);
    }

    /** Largest duty of a cycle. */
    public OptionalDouble dutyMaxPercent() {
        return cycles == 0 ? OptionalDouble.empty() : OptionalDouble.of(dutyMax);
    }

    /** The faults that came to pass, by their start. */
    public List<Happening> happenings() {
        List<Happening> sorted = new ArrayList<>(happenings);
        sorted.sort(Comparator.comparingDouble(Happening::startSeconds));
        return List.copyOf(sorted);
    }
}
