// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import java.util.ArrayList;
import java.util.List;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.Budget.Shape;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.EdgeUncertainty;

/**
 * How errors of the edges act on means over the cycles that count: in seconds.
 *
 * <p>Cycles that follow each other share an edge. Let a stretch of n such cycles have the starting edges s_0 ... s_n and the
 * switching edges f_1 ... f_n. The sum of its periods is s_n - s_0: of the mean period only the outermost edges of the stretches
 * matter. The sum of its pulse durations is the sum of f - s, in which every edge counts once, but the last start not at all.
 * The sum of its duties, (f - s) / T, moves with f by 1 / T, with a start inside by -1 / T (as much as its own pulse
 * loses; the two periods that it shares take from each other), with s_0 by -(1 - D) / T and with s_n by -D / T.
 *
 * <p>Errors that are the same for all edges of a direction cancel in periods and move all pulses alike.
 */
final class EdgeBudget {
    private final ChannelContext channel;
    private final long cycles;
    private final long stretches;

    /**
     * Over so many cycles.
     *
     * @param cycles number that counts, at least 1
     * @param stretches number of runs without an interruption that they come in
     */
    EdgeBudget(ChannelContext channel, long cycles, long stretches) {
        this.channel = channel;
        this.cycles = cycles;
        this.stretches = stretches;
    }

    /** Of the mean period, the clock left out. */
    List<Component> meanPeriod() {
        EdgeUncertainty edge = channel.starting();
        List<Component> parts = new ArrayList<>();
        parts.add(noise(Math.sqrt(2.0 * stretches) * edge.noiseSeconds() / cycles));
        if (stretches == 1) {
            parts.add(sampling("sampling of the first edge", edge.samplingSeconds() / cycles));
            parts.add(sampling("sampling of the last edge", edge.samplingSeconds() / cycles));
        } else {
            double all = Math.sqrt(2.0 * stretches) * edge.samplingSeconds() / cycles;
            parts.add(Component.normal("sampling of the outermost edges", all));
        }
        return parts;
    }

    /** Of the mean pulse duration, the clock left out. */
    List<Component> meanPulse() {
        return pulse(1.0 / cycles);
    }

    /**
     * Of the mean duty times the period.
     *
     * @param duty from 0 to 1
     */
    List<Component> meanDuty(double duty) {
        double ends = (1 - duty) * (1 - duty) + duty * duty;
        return pulse(((double) cycles - stretches + stretches * ends) / cycles / cycles);
    }

    /**
     * Of the mean integral of a cycle, in swings times seconds. Straight lines between samples see an edge that is faster than
     * them as one from sample to sample, off by as much as its instant; corners of one that is not cost up to an eighth
     * of a step of the slope. The first and last edge also decide what belongs to the cycles, in which half of a swing counts.
     */
    List<Component> meanArea(double stepSeconds) {
        EdgeUncertainty start = channel.starting();
        EdgeUncertainty end = channel.switching();
        double outermost = start.singleSeconds() * Math.sqrt(stretches / 2.0) / cycles;
        double scatter = Math.hypot(start.samplingScatterSeconds(), end.samplingScatterSeconds());
        return List.of(
                Component.normal("sampling, places that differ", scatter / Math.sqrt((double) cycles)),
                sampling("sampling of the starting edges", start.samplingKeptSeconds()),
                sampling("sampling of the switching edges", end.samplingKeptSeconds()),
                Component.normal("outermost edges", outermost),
                Component.rectangular("corners of the starting edges", corners(start, stepSeconds)),
                Component.rectangular("corners of the switching edges", corners(end, stepSeconds)));
    }

    /**
     * What straight lines between the samples take from the integral of the square of a cycle, in units squared times seconds. An
     * edge from L to H within a step gets (L^2 + L H + H^2) / 3 of it instead of (L^2 + H^2) / 2: (H - L)^2 / 6 less. A ramp over
     * n steps loses an n-th of that at its corners, on the average over its places between the samples.
     */
    double meanMissingSquare(double stepSeconds) {
        double swing = channel.levels().swing();
        double steps = 0;
        for (EdgeUncertainty edge : List.of(channel.rise(), channel.fall())) {
            steps += Math.min(1, stepSeconds / Math.max(stepSeconds, swing * edge.secondsPerUnit()));
        }
        return swing * swing * stepSeconds * steps / 6;
    }

    private double corners(EdgeUncertainty edge, double stepSeconds) {
        boolean resolved = edge.samplingSeconds() < stepSeconds / 4;
        double durationSeconds = channel.levels().swing() * edge.secondsPerUnit();
        return resolved && durationSeconds > 0 ? stepSeconds * stepSeconds / 8 / durationSeconds : 0;
    }

    private List<Component> pulse(double startingShare) {
        EdgeUncertainty start = channel.starting();
        EdgeUncertainty end = channel.switching();
        double ending = 1 / Math.sqrt((double) cycles);
        double starting = Math.sqrt(startingShare);
        List<Component> parts = new ArrayList<>();
        parts.add(noise(Math.hypot(starting * start.noiseSeconds(), ending * end.noiseSeconds())));
        double scatter = Math.hypot(starting * start.samplingScatterSeconds(), ending * end.samplingScatterSeconds());
        parts.add(Component.normal("sampling, places that differ", scatter));
        parts.addAll(common("starting edges", start));
        parts.addAll(common("switching edges", end));
        parts.addAll(levels());
        return parts;
    }

    private static List<Component> common(String edges, EdgeUncertainty edge) {
        return List.of(
                sampling("sampling of the " + edges, edge.samplingKeptSeconds()),
                Component.bounded("code step at the " + edges, Shape.RECTANGULAR, edge.codeSeconds()),
                Component.bounded("curvature of the " + edges, Shape.RECTANGULAR, edge.shapeSeconds()));
    }

    /** The 50 % level is off by half of each level's error; a rising edge then passes it as much later as a falling one earlier. */
    private List<Component> levels() {
        double sensitivity = (channel.rise().secondsPerUnit() + channel.fall().secondsPerUnit()) / 2;
        List<Component> parts = new ArrayList<>();
        parts.add(whole(
                "low level",
                channel.levels().low().budget().times(sensitivity),
                channel.levels().low().u() * sensitivity));
        parts.add(whole(
                "high level",
                channel.levels().high().budget().times(sensitivity),
                channel.levels().high().u() * sensitivity));
        return parts;
    }

    // One component for a whole budget, with the shape of its largest part if that makes most of it.
    private static Component whole(String name, Budget budget, double u) {
        boolean one = budget.dominant().filter(it -> it.u() > 0.9 * u).isPresent();
        Shape shape = one ? budget.dominant().orElseThrow().shape() : Shape.NORMAL;
        return shape == Shape.STUDENT
                ? Component.typeA(name, u, budget.effectiveDegreesOfFreedom())
                : Component.bounded(name, shape, u);
    }

    private static Component noise(double u) {
        return Component.typeA("noise at the edges", u, Double.POSITIVE_INFINITY);
    }

    private static Component sampling(String name, double u) {
        return Component.bounded(name, Shape.RECTANGULAR, u);
    }
}
