// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.ChannelContext;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleShape;
import org.dutywright.pulse.CycleTable;
import org.dutywright.pulse.Measurement;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.StateLevels;
import org.dutywright.pulse.Transition;
import org.dutywright.pulse.Uncertain;

/** Runs measurements over channels. One that fails gives results that say so; the others finish. */
public final class MeasurementRunner {
    /** An instant this share of a period before the end of a cycle still belongs to it, whatever rounding did. */
    private static final double ROUNDING = 1e-6;

    private static final int CYCLES_A_CHECK = 4096;

    private final List<Measurement> measurements;
    private final Map<Measurement, List<Result>> blank = new LinkedHashMap<>();

    /**
     * A runner.
     *
     * @throws IllegalArgumentException if two measurements, or two of their results, have the same id
     */
    public MeasurementRunner(List<Measurement> measurements) {
        this.measurements = List.copyOf(measurements);
        Set<String> ids = new HashSet<>();
        Set<String> resultIds = new HashSet<>();
        for (Measurement measurement : measurements) {
            if (!ids.add(measurement.id())) {
                throw new IllegalArgumentException("two measurements have the id " + measurement.id());
            }
            List<Result> results = List.copyOf(measurement.start(nothing()).finish());
            for (Result result : results) {
                if (!resultIds.add(result.id())) {
                    throw new IllegalArgumentException("two measured results have the id " + result.id());
                }
            }
            blank.put(measurement, results);
        }
    }

    // A channel without cycles: measurements state their results on it.
    private static ChannelContext nothing() {
        Uncertain low = new Uncertain(0, 0, 0);
        Uncertain high = new Uncertain(1, 0, 0);
        StateLevels levels = new StateLevels(low, high, 0, 0);
        return new ChannelContext("", "V", ActiveLevel.HIGH, levels, 1, 0, 0, 0, 1e-3, 0, PulseSettings.defaults());
    }

    /** The results of a channel that cannot be measured. */
    public Map<String, Result> absent(String unit, String reason) {
        Map<String, Result> all = new LinkedHashMap<>();
        for (List<Result> results : blank.values()) {
            addAbsent(all, results, reason);
        }
        return all;
    }

    private static void addAbsent(Map<String, Result> all, List<Result> results, String reason) {
        for (Result result : results) {
            all.put(result.id(), new Result(result.id(), result.label(), result.unit(), new Outcome.Absent(reason)));
        }
    }

    /** The results of a channel with pulses. */
    public Map<String, Result> run(ChannelAnalysis channel, double timeBaseRelative, Progress progress)
            throws IOException {
        ChannelContext context = channel.context(timeBaseRelative);
        List<Guarded> runs = new ArrayList<>();
        for (Measurement measurement : measurements) {
            runs.add(new Guarded(measurement, context));
        }
        feed(channel, runs, progress);
        Map<String, Result> all = new LinkedHashMap<>();
        for (Guarded run : runs) {
            run.finish(all);
        }
        return all;
    }

    private static void feed(ChannelAnalysis channel, List<Guarded> runs, Progress progress) throws IOException {
        Transitions transitions = new Transitions(channel, runs);
        CycleTable.Cursor cursor = channel.cycles().cursor();
        for (Cycle cycle = cursor.next(); cycle != null; cycle = cursor.next()) {
            if (cycle.index() % CYCLES_A_CHECK == 0) {
                progress.checkCancelled();
            }
            double start = cycle.startSeconds() - ROUNDING * cycle.periodSeconds();
            transitions.until(start, true);
            transitions.until(start + cycle.periodSeconds(), cycle.disturbed());
            CycleShape shape = transitions.shape(cycle);
            for (Guarded run : runs) {
                run.cycle(cycle, shape);
            }
        }
        transitions.until(Double.POSITIVE_INFINITY, true);
    }

    /** The transitions of a channel on their way into the measurements. */
    private static final class Transitions {
        private final SpillLog.Reader<Pulse> reader;
        private final SpillLog.Reader<Shape> shapes;
        private final double originSeconds;
        private final boolean inputKnown;
        private final List<Guarded> runs;
        private Pulse pulse;
        /** Shapes of the pulse read last, which is still to come, and of the two before it. */
        private Shape shape;

        private Shape before = new Shape();
        private Shape beforeThat = before;

        Transitions(ChannelAnalysis channel, List<Guarded> runs) throws IOException {
            reader = channel.pulses().orElseThrow().reader(1);
            shapes = channel.shapes().orElseThrow().reader(3);
            originSeconds = channel.originSeconds();
            inputKnown = channel.plan().input().isPresent();
            this.runs = runs;
            pulse = reader.next();
            shape = shapes.next();
        }

        void until(double seconds, boolean disturbed) throws IOException {
            while (pulse != null && originSeconds + pulse.startSeconds < seconds) {
                if (pulse.startsWithEdge) {
                    Transition transition = transition();
                    for (Guarded run : runs) {
                        run.transition(transition, disturbed);
                    }
                }
                beforeThat = before;
                before = shape;
                pulse = reader.next();
                shape = shapes.next();
            }
        }

        private Transition transition() {
            return new Transition(
                    pulse.high,
                    originSeconds + pulse.startSeconds,
                    pulse.edgeSeconds,
                    pulse.edgeSamples,
                    pulse.fitSamples,
                    before.tail.aberration(),
                    shape.head.aberration());
        }

        /** The shape of the cycle whose two pulses were passed last. */
        CycleShape shape(Cycle cycle) {
            double meanSquare = (beforeThat.squares + before.squares) / cycle.periodSeconds();
            return new CycleShape(meanSquare, inputKnown ? Optional.of(input()) : Optional.empty());
        }

        private CycleShape.InputCycle input() {
            double start = beforeThat.inputSeconds;
            double end = shape == null ? Double.NaN : shape.inputSeconds;
            double pulseSeconds = before.inputSeconds - start;
            return pulseSeconds > 0 && end > before.inputSeconds
                    ? new CycleShape.InputCycle(
                            end - start,
                            pulseSeconds,
                            beforeThat.inputSecondsPerUnit,
                            before.inputSecondsPerUnit,
                            beforeThat.inputBendSeconds,
                            before.inputBendSeconds)
                    : CycleShape.InputCycle.UNSEEN;
        }
    }

    /** One measurement that may fail without stopping the others. */
    private final class Guarded {
        private final Measurement measurement;
        private Measurement.Run run;
        private boolean failed;
        private String failure = "";

        Guarded(Measurement measurement, ChannelContext context) {
            this.measurement = measurement;
            try {
                run = measurement.start(context);
            } catch (CancelledException e) {
                throw e;
            } catch (RuntimeException e) {
                fail(e);
            }
        }

        private void fail(RuntimeException e) {
            failed = true;
            failure = "the measurement " + measurement.id() + " failed: " + e;
        }

        void transition(Transition transition, boolean disturbed) {
            if (!failed) {
                try {
                    run.transition(transition, disturbed);
                } catch (CancelledException e) {
                    throw e;
                } catch (RuntimeException e) {
                    fail(e);
                }
            }
        }

        void cycle(Cycle cycle, CycleShape shape) {
            if (!failed) {
                try {
                    run.cycle(cycle, shape);
                } catch (CancelledException e) {
                    throw e;
                } catch (RuntimeException e) {
                    fail(e);
                }
            }
        }

        void finish(Map<String, Result> all) {
            if (!failed) {
                try {
                    run.finish().forEach(result -> all.put(result.id(), result));
                } catch (CancelledException e) {
                    throw e;
                } catch (RuntimeException e) {
                    fail(e);
                }
            }
            if (failed) {
                addAbsent(all, blank.get(measurement), failure);
            }
        }
    }
}
