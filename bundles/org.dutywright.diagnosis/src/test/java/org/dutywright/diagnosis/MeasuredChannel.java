// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.DoubleUnaryOperator;
import org.dutywright.capture.Channel;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.EdgeInstants;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.LevelSummary;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.StateLevels;
import org.dutywright.pulse.Statistic;
import org.dutywright.pulse.Status;
import org.dutywright.pulse.Uncertain;

/**
 * Builds what would have been measured on one channel; healthy at first, 200 Hz, 10 % duty, 0.4 V to 12 V. A channel
 * named signal2 counts its low state.
 */
final class MeasuredChannel {
    private final String name;
    private final ActiveLevel active;
    private Role role = Role.PWM;
    private String unit = "V";
    private Status status = Status.OK;
    private String statusReason = "";
    private double lowVolts = 0.4;
    private double highVolts = 12;
    private double levelU = 0.001;
    private double frequencyHz = 200;
    private double frequencyU = 0.01;
    private double dutyU = 0.01;
    private double riseSeconds = 20e-6;
    private double fallSeconds = 20e-6;
    private double transitionU = 1e-6;
    private List<Cycle> cycles = new ArrayList<>();
    private final Map<EventKind, Long> counts = new EnumMap<>(EventKind.class);
    private final List<PulseEvent> events = new ArrayList<>();
    private final Map<String, Outcome> replaced = new HashMap<>();

    private MeasuredChannel(String name) {
        this.name = name;
        this.active = name.equals("signal2") ? ActiveLevel.LOW : ActiveLevel.HIGH;
        carrier(200, 0, 2, time -> 10);
    }

    static MeasuredChannel named(String name) {
        return new MeasuredChannel(name);
    }

    /** A channel read as a level. */
    static ChannelMeasurement level(String name, Role role, double meanVolts, double u) {
        Uncertain mean = new Uncertain(meanVolts, u, 2 * u);
        return new ChannelMeasurement(
                new Channel(name, "V"),
                role,
                ActiveLevel.HIGH,
                Status.OK,
                "",
                Optional.empty(),
                Optional.of(new LevelSummary(mean, meanVolts, meanVolts, meanVolts)),
                Optional.empty(),
                0,
                0,
                Map.of(),
                Map.of(),
                List.of(),
                new ListCycles(List.of()),
                EdgeInstants.NONE);
    }

    /** Cycles of one carrier from its first edge on; the duty of a cycle is that at its middle. */
    MeasuredChannel carrier(double hz, double firstEdgeSeconds, double untilSeconds, DoubleUnaryOperator dutyPercent) {
        frequencyHz = hz;
        cycles = new ArrayList<>();
        double period = 1 / hz;
        for (int i = 0; firstEdgeSeconds + (i + 1) * period <= untilSeconds + 1e-9; i++) {
            double start = firstEdgeSeconds + i * period;
            double pulse = period * dutyPercent.applyAsDouble(start + period / 2) / 100;
            cycles.add(new Cycle(i, start, period, pulse, 0, false));
        }
        return this;
    }

    /** Marks the cycles that touch a span as disturbed. */
    MeasuredChannel disturbed(double fromSeconds, double toSeconds) {
        cycles.replaceAll(cycle -> cycle.startSeconds() < toSeconds && cycle.endSeconds() > fromSeconds
                ? new Cycle(
                        cycle.index(),
                        cycle.startSeconds(),
                        cycle.periodSeconds(),
                        cycle.pulseDurationSeconds(),
                        cycle.mean(),
                        true)
                : cycle);
        return this;
    }

    /** Removes the cycles that touch a span and numbers the rest anew, as a gap in the recording does. */
    MeasuredChannel without(double fromSeconds, double toSeconds) {
        cycles.removeIf(cycle -> cycle.startSeconds() < toSeconds && cycle.endSeconds() > fromSeconds);
        for (int i = 0; i < cycles.size(); i++) {
            Cycle cycle = cycles.get(i);
            cycles.set(
                    i,
                    new Cycle(
                            i,
                            cycle.startSeconds(),
                            cycle.periodSeconds(),
                            cycle.pulseDurationSeconds(),
                            cycle.mean(),
                            cycle.disturbed()));
        }
        return this;
    }

    /** As a restart does: the cycles from here on start later. */
    MeasuredChannel shifted(double fromSeconds, double bySeconds) {
        cycles.replaceAll(cycle -> cycle.startSeconds() < fromSeconds
                ? cycle
                : new Cycle(
                        cycle.index(),
                        cycle.startSeconds() + bySeconds,
                        cycle.periodSeconds(),
                        cycle.pulseDurationSeconds(),
                        cycle.mean(),
                        cycle.disturbed()));
        return this;
    }

    MeasuredChannel role(Role value) {
        role = value;
        return this;
    }

    MeasuredChannel unit(String value) {
        unit = value;
        return this;
    }

    MeasuredChannel status(Status value, String reason) {
        status = value;
        statusReason = reason;
        return this;
    }

    MeasuredChannel levels(double low, double high) {
        lowVolts = low;
        highVolts = high;
        return this;
    }

    MeasuredChannel levelU(double value) {
        levelU = value;
        return this;
    }

    MeasuredChannel frequencyU(double value) {
        frequencyU = value;
        return this;
    }

    MeasuredChannel dutyU(double value) {
        dutyU = value;
        return this;
    }

    MeasuredChannel transitions(double rise, double fall) {
        riseSeconds = rise;
        fallSeconds = fall;
        return this;
    }

    MeasuredChannel result(String id, Outcome outcome) {
        replaced.put(id, outcome);
        return this;
    }

    MeasuredChannel count(EventKind kind, long count) {
        counts.put(kind, count);
        return this;
    }

    MeasuredChannel event(EventKind kind, double startSeconds, double endSeconds) {
        OptionalLong cycle = cycles.stream()
                .filter(it -> it.startSeconds() <= startSeconds && it.endSeconds() > startSeconds)
                .mapToLong(Cycle::index)
                .findFirst();
        events.add(new PulseEvent(kind, startSeconds, endSeconds, cycle, kind.word() + " made for the test"));
        counts.merge(kind, 1L, Long::sum);
        return this;
    }

    ChannelMeasurement build() {
        boolean ok = status == Status.OK && role == Role.PWM;
        List<Cycle> healthy = cycles.stream().filter(it -> !it.disturbed()).toList();
        events.sort(Comparator.comparingDouble(PulseEvent::startSeconds));
        Uncertain mean = new Uncertain(lowVolts, levelU, 2 * levelU);
        return new ChannelMeasurement(
                new Channel(name, unit),
                role,
                active,
                status,
                statusReason,
                ok ? Optional.of(levels()) : Optional.empty(),
                Optional.of(new LevelSummary(mean, lowVolts, highVolts, lowVolts)),
                ok ? Optional.of(1 / frequencyHz) : Optional.empty(),
                ok ? cycles.size() : 0,
                ok ? cycles.size() - healthy.size() : 0,
                ok ? results(healthy) : Map.of(),
                counts,
                events,
                new ListCycles(ok ? List.copyOf(cycles) : List.of()),
                EdgeInstants.NONE);
    }

    private StateLevels levels() {
        return new StateLevels(
                new Uncertain(lowVolts, levelU, 2 * levelU), new Uncertain(highVolts, levelU, 2 * levelU), 0.01, 0.01);
    }

    private Map<String, Result> results(List<Cycle> healthy) {
        Map<String, Result> results = new LinkedHashMap<>();
        double[] duties = healthy.stream().mapToDouble(Cycle::dutyPercent).toArray();
        put(results, "frequency", "Hz", statistic(new double[] {frequencyHz}, frequencyU));
        put(results, "duty", "%", statistic(duties, dutyU));
        put(results, "transition.rise", "s", single(riseSeconds));
        put(results, "transition.fall", "s", single(fallSeconds));
        return results;
    }

    private void put(Map<String, Result> results, String id, String resultUnit, Outcome outcome) {
        results.put(id, new Result(id, id, resultUnit, replaced.getOrDefault(id, outcome)));
    }

    private Outcome single(double seconds) {
        return new Outcome.Single(new Uncertain(seconds, transitionU, 2 * transitionU));
    }

    private static Outcome statistic(double[] values, double u) {
        if (values.length == 0) {
            return new Outcome.Absent("no whole undisturbed cycle");
        }
        double sum = 0;
        double min = values[0];
        double max = values[0];
        for (double value : values) {
            sum += value;
            min = Math.min(min, value);
            max = Math.max(max, value);
        }
        double mean = sum / values.length;
        double squares = 0;
        for (double value : values) {
            squares += (value - mean) * (value - mean);
        }
        double sd = values.length > 1 ? Math.sqrt(squares / (values.length - 1)) : 0;
        return new Outcome.OfCycles(new Statistic(mean, min, max, sd, u, 2 * u));
    }
}
