// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Channel;
import org.dutywright.capture.Segment;
import org.dutywright.capture.Source;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;
import org.dutywright.pulse.EdgeInstants;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.LevelSummary;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.StateLevels;
import org.dutywright.pulse.Statistic;
import org.dutywright.pulse.Status;
import org.dutywright.pulse.Uncertain;

/** Made-up measurements with numbers that can be told apart in a file. */
final class Examples {
    static final RunSettings RUN = RunSettings.of("Dutywright 9.9.9", 50);

    private Examples() {}

    /** A PWM channel, a stuck one and a supply, 400 samples at 1 kHz with a gap after 0.2 s. */
    static CaptureMeasurement measurement() {
        return measurement(List.of(pwm(), stuck(), supply()));
    }

    static CaptureMeasurement measurement(List<ChannelMeasurement> channels) {
        return new CaptureMeasurement(
                capture(),
                PulseSettings.defaults(),
                List.of(new Fitness("signal1.samplesPerPulse", Fitness.Grade.POOR, "5 samples a pulse")),
                channels);
    }

    static Capture capture() {
        Capture plain = Captures.ofArrays(
                List.of("signal1", "signal2", "battery"),
                List.of("V", "V", "V"),
                1000,
                List.of(new Segment(0, 200, -0.1), new Segment(200, 200, 0.4)),
                new double[400],
                new double[400],
                new double[400]);
        return new Capture(
                List.of(new Source(Path.of("yard.csv"), "ab".repeat(32))),
                plain.channels(),
                plain.timeBase(),
                plain.samples(),
                Map.of("delimiter", "semicolon"));
    }

    static ChannelMeasurement pwm() {
        Map<String, Result> results = new LinkedHashMap<>();
        cycles(results, "frequency", "Hz", new Statistic(200.003, 199.5, 200.5, 0.25, 0.012, 0.024));
        cycles(results, "period", "s", new Statistic(0.005, 0.0049, 0.0051, 2e-5, 3e-7, 6e-7));
        cycles(results, "duty", "%", new Statistic(10.25, 9.5, 45.5, 11.5, 0.004, 0.008));
        cycles(results, "pulse-duration", "s", new Statistic(5.1e-4, 4.7e-4, 2.3e-3, 5e-4, 2e-7, 4e-7));
        cycles(results, "input-duty", "%", new Statistic(10.5, 9.75, 45.75, 11.5, 0.005, 0.01));
        cycles(results, "overshoot.rise", "%", new Statistic(12.5, 12, 13, 0.3, 0.1, 0.2));
        absent(results, "overshoot.fall", "%", "no undisturbed transition has samples around it");
        single(results, "transition.rise", "s", new Uncertain(1.2e-5, 1e-6, 2e-6));
        absent(results, "transition.fall", "s", "fewer than two samples on each edge");
        single(results, "mean-voltage", "V", new Uncertain(1.59, 0.002, 0.004));
        single(results, "period-jitter.rms", "s", new Uncertain(2e-5, 1e-7, 2e-7));
        single(results, "period-jitter.peak-to-peak", "s", new Uncertain(2e-4, 1e-6, 2e-6));
        cycles(results, "overshoot", "%", new Statistic(3.5, 3, 4, 0.5, 0.25, 0.5));
        absent(results, "settling", "s", "the signal never settles");
        EnumMap<EventKind, Long> counts = new EnumMap<>(EventKind.class);
        counts.put(EventKind.RUNT, 1L);
        counts.put(EventKind.MISSING_PULSE, 2500L);
        return new ChannelMeasurement(
                new Channel("signal1", "V"),
                Role.PWM,
                ActiveLevel.HIGH,
                Status.OK,
                "",
                Optional.of(new StateLevels(
                        new Uncertain(0.4, 0.001, 0.002), new Uncertain(12.0, 0.003, 0.006), 0.02, 0.03)),
                Optional.of(level(1.6)),
                Optional.of(0.005),
                3,
                1,
                results,
                counts,
                List.of(
                        new PulseEvent(
                                EventKind.MISSING_PULSE, -0.05, -0.049, OptionalLong.of(1), "no pulse for 10.0 ms"),
                        new PulseEvent(EventKind.RUNT, 0.45, 0.4501, OptionalLong.empty(), "peak at 3.2 V")),
                table(List.of(
                        new Cycle(0, -0.0999, 0.005, 0.0005, 1.58, false),
                        new Cycle(1, -0.0949, 0.01, 0.0005, 0.97, true),
                        new Cycle(2, 0.41, 0.1 + 0.2, 0.1, 1.6, false))),
                new EdgeInstants(5, 2));
    }

    /** The example of a PWM channel with another name and other cycles. */
    static ChannelMeasurement withCycles(String name, List<Cycle> cycles) {
        ChannelMeasurement pwm = pwm();
        return new ChannelMeasurement(
                new Channel(name, "V"),
                pwm.role(),
                pwm.active(),
                pwm.status(),
                pwm.statusReason(),
                pwm.levels(),
                pwm.level(),
                pwm.medianPeriodSeconds(),
                cycles.size(),
                0,
                pwm.results(),
                pwm.eventCounts(),
                pwm.events(),
                table(cycles),
                EdgeInstants.NONE);
    }

    static ChannelMeasurement stuck() {
        Map<String, Result> results = new LinkedHashMap<>();
        absent(results, "frequency", "Hz", "no whole cycle");
        return new ChannelMeasurement(
                new Channel("signal2", "V"),
                Role.PWM,
                ActiveLevel.LOW,
                Status.STUCK_LOW,
                "no transition in 0.400 s, level 0.05 V",
                Optional.empty(),
                Optional.of(level(0.05)),
                Optional.empty(),
                0,
                0,
                results,
                Map.of(EventKind.STUCK_LOW, 1L),
                List.of(new PulseEvent(
                        EventKind.STUCK_LOW, -0.1, 0.599, OptionalLong.empty(), "no transition in all of it")),
                table(List.of()),
                EdgeInstants.NONE);
    }

    static ChannelMeasurement supply() {
        return new ChannelMeasurement(
                new Channel("battery", "V"),
                Role.SUPPLY,
                ActiveLevel.HIGH,
                Status.OK,
                "",
                Optional.empty(),
                Optional.of(level(13.8)),
                Optional.empty(),
                0,
                0,
                Map.of(),
                Map.of(),
                List.of(),
                table(List.of()),
                EdgeInstants.NONE);
    }

    static LevelSummary level(double mean) {
        return new LevelSummary(new Uncertain(mean, 0.01, 0.02), mean - 0.5, mean + 0.25, mean + 0.125);
    }

    static void cycles(Map<String, Result> results, String id, String unit, Statistic statistic) {
        results.put(id, new Result(id, id.replace('-', ' '), unit, new Outcome.OfCycles(statistic)));
    }

    static void single(Map<String, Result> results, String id, String unit, Uncertain value) {
        results.put(id, new Result(id, id.replace('-', ' '), unit, new Outcome.Single(value)));
    }

    static void absent(Map<String, Result> results, String id, String unit, String reason) {
        results.put(id, new Result(id, id.replace('-', ' '), unit, new Outcome.Absent(reason)));
    }

    static CycleTable table(List<Cycle> cycles) {
        List<Cycle> kept = new ArrayList<>(cycles);
        return new CycleTable() {
            @Override
            public long size() {
                return kept.size();
            }

            @Override
            public Cycle get(long index) {
                return kept.get(Math.toIntExact(index));
            }

            @Override
            public Cursor cursor() {
                Iterator<Cycle> cycles = kept.iterator();
                return () -> cycles.hasNext() ? cycles.next() : null;
            }

            @Override
            public void close() {}
        };
    }

    static OptionalDouble some(double value) {
        return OptionalDouble.of(value);
    }
}
