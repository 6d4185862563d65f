// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.EventKind;

/** Measurements made by hand of what faults look like, and what holds for every ranking. */
final class Pictures {
    private Pictures() {}

    static void assertTop(CheckResult result, Place place, Kind kind, String... channels) {
        assertSound(result);
        Suspect top = top(result);
        assertThat(top.place()).as("%s", result.suspects()).isEqualTo(place);
        assertThat(top.kind()).as("%s", result.suspects()).isEqualTo(Optional.ofNullable(kind));
        if (channels.length > 0) {
            assertThat(top.channels()).containsExactly(channels);
        }
    }

    /** What holds for every ranking. */
    static void assertSound(CheckResult result) {
        assertThat(result.suspects().stream().mapToDouble(Suspect::weight).sum())
                .isCloseTo(1, within(1e-12));
        assertThat(result.suspects())
                .isSortedAccordingTo((a, b) -> Double.compare(b.weight(), a.weight()))
                .allSatisfy(it -> {
                    assertThat(it.reasonsFor()).isNotEmpty();
                    assertThat(it.reasonsFor()).allMatch(reason -> reason.endsWith("."));
                    assertThat(it.reasonsAgainst()).allMatch(reason -> reason.endsWith("."));
                    assertThat(String.join(" ", it.reasonsFor()))
                            .doesNotContain("NaN")
                            .doesNotContain("Infinity");
                });
        assertThat(result.nextMeasurement()).endsWith(".");
    }

    static Suspect top(CheckResult result) {
        return result.suspects().get(0);
    }

    static double weight(CheckResult result, Place place) {
        return result.suspects().stream()
                .filter(it -> it.place() == place)
                .mapToDouble(Suspect::weight)
                .sum();
    }

    static CheckResult check(MeasuredChannel... channels) throws IOException {
        ChannelMeasurement[] built = new ChannelMeasurement[channels.length];
        for (int i = 0; i < channels.length; i++) {
            built[i] = channels[i].build();
        }
        CheckResult result = Checks.check(Sensors.twin(), CheckSettings.none(), built);
        assertSound(result);
        return result;
    }

    static CheckResult checkOver(CaptureMeasurement measurement, double... volts) throws IOException {
        return Checks.check(Sensors.twin(), CheckSettings.none(), Checks.over(measurement, volts));
    }

    /** Two dropouts, after which the carrier comes later by so much. */
    static MeasuredChannel dropouts(MeasuredChannel channel, double laterSeconds) {
        return channel.without(0.601, 0.642)
                .shifted(0.62, laterSeconds)
                .event(EventKind.DROPOUT, 0.601, 0.645)
                .without(1.301, 1.342)
                .shifted(1.32, laterSeconds)
                .event(EventKind.DROPOUT, 1.301, 1.345);
    }

    static MeasuredChannel spikes(MeasuredChannel channel, EventKind kind, double... seconds) {
        for (double instant : seconds) {
            channel.event(kind, instant, instant + 50e-6);
        }
        return channel;
    }

    /** Released, pressed and back once a second. */
    static double sweep(double seconds) {
        return 50 - 50 * Math.cos(2 * Math.PI * seconds);
    }

    static MeasuredChannel one(DoubleUnaryOperator travelPercent) {
        return MeasuredChannel.named("signal1").carrier(200, 0, 2, t -> 10 + 0.35 * travelPercent.applyAsDouble(t));
    }

    static MeasuredChannel two(DoubleUnaryOperator travelPercent) {
        return MeasuredChannel.named("signal2").carrier(203, 0.0013, 2, t -> 20 + 0.7 * travelPercent.applyAsDouble(t));
    }
}
