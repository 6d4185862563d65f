// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import org.dutywright.pulse.EdgeInstants;
import org.dutywright.pulse.EventSettings;
import org.dutywright.pulse.PulseSettings;

/**
 * Last pass over a channel: transitions with the final levels; bounces and runts are taken out, level shifts found. All
 * that is found stands in logs, so that memory does not grow with the length of the capture.
 */
final class PulseStages implements PulseSink, AutoCloseable {
    private final double windowSeconds;
    private final PulseLog pulses = new PulseLog();
    private final MarkLog bounces = new MarkLog();
    private final MarkLog runts = new MarkLog();
    private final MarkLog excursions = new MarkLog();
    private final MarkLog lowShifts = new MarkLog();
    private final MarkLog highShifts = new MarkLog();
    private final MarkLog lateEdges = new MarkLog();
    private final LevelShiftWatch lowWatch;
    private final LevelShiftWatch highWatch;
    private final EdgeSlopes slopes = new EdgeSlopes();
    private long fitted;
    private long interpolated;

    private PulseStages(States states, PulseSettings settings) {
        double period = states.periodGuessSeconds();
        windowSeconds = period > 0 ? settings.get(EventSettings.BOUNCE_WINDOW) / 100 * period : 0;
        lowWatch = new LevelShiftWatch(false, states, settings, lowShifts);
        highWatch = new LevelShiftWatch(true, states, settings, highShifts);
    }

    /** Reads the channel once. */
    static PulseStages run(ChannelSource source, States states, PulseSettings settings) throws IOException {
        PulseStages stages = new PulseStages(states, settings);
        try {
            PulseSink runtFilter = new RuntFilter(states, stages, stages.runts);
            PulseSink merger = new BounceMerger(stages.windowSeconds, runtFilter, stages.bounces);
            new EdgeFinder(states.track(), settings, merger).run(source.open());
            stages.lowWatch.finish();
            stages.highWatch.finish();
            return stages;
        } catch (IOException | RuntimeException e) {
            stages.close();
            throw e;
        }
    }

    @Override
    public void pulse(Pulse pulse) throws IOException {
        pulses.add(pulse);
        slopes.add(pulse);
        fitted += pulse.startsWithEdge && pulse.fitSamples > 0 ? 1 : 0;
        interpolated += pulse.startsWithEdge && pulse.fitSamples == 0 ? 1 : 0;
        (pulse.high ? highWatch : lowWatch).pulse(pulse);
    }

    // Shortly after an edge a signal may swing back and forth without crossing: that is its aberration, no runt.
    @Override
    public void excursion(Excursion excursion) throws IOException {
        double edgeSeconds = excursion.pulseStartSeconds();
        boolean aberration = excursion.afterEdge()
                && excursion.startSeconds() <= edgeSeconds + windowSeconds
                && excursion.endSeconds() <= edgeSeconds + 2 * windowSeconds;
        if (!aberration) {
            excursions.add(excursion.startSeconds(), excursion.endSeconds(), excursion.peak(), excursion.high());
        }
    }

    EdgeInstants edgeInstants() {
        return new EdgeInstants(fitted, interpolated);
    }

    EdgeSlopes slopes() {
        return slopes;
    }

    PulseLog pulses() {
        return pulses;
    }

    MarkLog bounces() {
        return bounces;
    }

    MarkLog runts() {
        return runts;
    }

    MarkLog excursions() {
        return excursions;
    }

    MarkLog lowShifts() {
        return lowShifts;
    }

    MarkLog highShifts() {
        return highShifts;
    }

    /** Empty until the limits of the events are known; see {@link LateEdges}. */
    MarkLog lateEdges() {
        return lateEdges;
    }

    @Override
    public void close() throws IOException {
        pulses.close();
        bounces.close();
        runts.close();
        excursions.close();
        lowShifts.close();
        highShifts.close();
        lateEdges.close();
    }
}
