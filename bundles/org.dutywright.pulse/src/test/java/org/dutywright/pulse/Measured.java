// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;

/** Short cuts of the tests to measure signals and read the results. */
public final class Measured {
    private Measured() {}

    public static Capture capture(TestSignal... signals) {
        List<String> names = new ArrayList<>();
        List<String> units = new ArrayList<>();
        double[][] values = new double[signals.length][];
        for (int i = 0; i < signals.length; i++) {
            names.add("signal" + (i + 1));
            units.add("V");
            values[i] = signals[i].samples();
        }
        return Captures.ofArrays(names, units, signals[0].startSeconds(), signals[0].sampleRateHz(), values);
    }

    public static ChannelPlan plan(Role role) {
        return new ChannelPlan(Optional.of(role), Optional.empty(), Optional.empty(), OptionalDouble.empty());
    }

    public static ChannelPlan plan(ActiveLevel active) {
        return new ChannelPlan(Optional.of(Role.PWM), Optional.of(active), Optional.empty(), OptionalDouble.empty());
    }

    public static CaptureMeasurement of(Capture capture, ChannelPlan... plans) {
        Map<String, ChannelPlan> byName = new LinkedHashMap<>();
        for (int i = 0; i < plans.length; i++) {
            byName.put(capture.channels().get(i).name(), plans[i]);
        }
        try {
            return CaptureMeasurer.withInstalled()
                    .measure(capture, byName, PulseSettings.defaults(), 50, Progress.NONE);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** The first channel of a capture of one signal that is PWM. */
    public static ChannelMeasurement pwm(TestSignal signal) {
        return of(capture(signal), plan(Role.PWM)).channels().get(0);
    }

    public static Statistic statistic(ChannelMeasurement channel, String id) {
        return ((Outcome.OfCycles) channel.results().get(id).outcome()).statistic();
    }

    public static Uncertain single(ChannelMeasurement channel, String id) {
        return ((Outcome.Single) channel.results().get(id).outcome()).value();
    }

    public static List<Cycle> cycles(ChannelMeasurement channel) {
        try {
            List<Cycle> cycles = new ArrayList<>();
            CycleTable.Cursor cursor = channel.cycles().cursor();
            for (Cycle cycle = cursor.next(); cycle != null; cycle = cursor.next()) {
                cycles.add(cycle);
            }
            return cycles;
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** Asserts that a channel has so many events of one kind and no other ones. */
    public static void assertOnly(ChannelMeasurement channel, EventKind kind, long count) {
        assertThat(channel.eventCounts()).isEqualTo(Map.of(kind, count));
        assertThat(channel.events()).hasSize((int) count).allMatch(event -> event.kind() == kind);
    }

    /** Asserts that a channel has no event. */
    public static void assertNone(ChannelMeasurement channel) {
        assertThat(channel.eventCounts()).isEmpty();
        assertThat(channel.events()).isEmpty();
    }

    /** The only event of a channel, of a given kind. */
    public static PulseEvent only(ChannelMeasurement channel, EventKind kind) {
        assertOnly(channel, kind, 1);
        return channel.events().get(0);
    }
}
