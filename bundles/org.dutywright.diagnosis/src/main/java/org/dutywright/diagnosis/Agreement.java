// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.Progress;
import org.dutywright.diagnosis.internal.agreement.Comparison;
import org.dutywright.diagnosis.internal.agreement.TravelChannel;
import org.dutywright.diagnosis.internal.lines.Lines;
import org.dutywright.diagnosis.internal.lines.RecordingFitness;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.ChannelPlan.Travel;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Status;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.Duty;
import org.dutywright.sensor.Sensor.SensorChannel;

/**
 * Agreement of the channels of a sensor in travel. Each channel's duty becomes travel by its own end points and
 * active level; the channels are compared at the same instants, by linear interpolation between the middles of
 * cycles, never over a disturbed cycle, a gap in the recording or more than two periods. The moving limit is in
 * force where both channels move faster than the sensor text says, by a least-squares slope over five cycles. A
 * difference beyond the limit counts as measured, whatever its uncertainty. Of three and more channels the worst
 * pair is reported.
 */
public final class Agreement {
    private Agreement() {}

    /**
     * What came of comparing.
     *
     * @param result empty if nothing was compared
     * @param absent why nothing was, a phrase; empty if there is a result
     */
    public record Outcome(Optional<AgreementResult> result, String absent) {}

    /**
     * Compares all pairs of channels.
     *
     * @param progress asked for cancelling only
     */
    public static Outcome of(CaptureMeasurement measurement, Sensor sensor, ChannelMatch match, Progress progress)
            throws IOException {
        if (sensor.agreement().isEmpty()) {
            return absent("the sensor text has no limit for the agreement of its channels");
        }
        RecordingFitness fitness = RecordingFitness.of(measurement);
        List<TravelChannel> channels = new ArrayList<>();
        List<String> reasons = new ArrayList<>();
        for (SensorChannel channel : sensor.channels()) {
            Optional<ChannelMeasurement> measured = Lines.measured(measurement, match, channel);
            String reason = obstacle(channel, measured, fitness);
            if (reason.isEmpty()) {
                channels.add(travel(channel, measured.orElseThrow()));
            } else {
                reasons.add(channel.name() + " " + reason);
            }
        }
        if (channels.size() < 2) {
            return absent("two channels with a travel are needed: " + String.join("; ", reasons));
        }
        Optional<AgreementResult> worst =
                Comparison.worst(channels, sensor.agreement().get(), progress);
        return worst.isPresent()
                ? new Outcome(worst, "")
                : absent("the channels have no undisturbed cycles at the same time");
    }

    private static Outcome absent(String reason) {
        return new Outcome(Optional.empty(), reason);
    }

    private static TravelChannel travel(SensorChannel channel, ChannelMeasurement measured) {
        Duty duty = channel.duty().orElseThrow();
        Travel travel = new Travel(duty.releasedPercent(), duty.pressedPercent());
        return new TravelChannel(
                channel.name(),
                measured.cycles(),
                travel,
                measured.medianPeriodSeconds().orElseThrow());
    }

    private static String obstacle(
            SensorChannel channel, Optional<ChannelMeasurement> measured, RecordingFitness fitness) {
        if (channel.duty().isEmpty()) {
            return "has no duty at the ends of travel in the sensor text";
        }
        if (measured.isEmpty()) {
            return "has no channel in the capture";
        }
        ChannelMeasurement found = measured.get();
        if (found.role() != Role.PWM) {
            return "was read as " + found.role().word();
        }
        if (found.status() != Status.OK) {
            return "is " + found.status().word();
        }
        if (found.medianPeriodSeconds().isEmpty()) {
            return "has no whole cycle";
        }
        Optional<Fitness> worst = fitness.worst(found.channel().name(), RecordingFitness.Aspect.TIMING);
        return worst.map(it -> "is recorded too poorly: " + it.reason()).orElse("");
    }
}
