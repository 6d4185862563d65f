// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.util.List;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.LineResult;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Status;

/** The line {@code NAME.signal}: whether the channel carries a signal at all. */
final class SignalState {
    private SignalState() {}

    static Line line(String item, ChannelMeasurement measured, RecordingFitness fitness) {
        if (measured.role() != Role.PWM) {
            return LineJudge.state(item, LineResult.INCONCLUSIVE, unusable(measured));
        }
        if (measured.status() == Status.OK) {
            // Pulses that nothing can be told of pass no check: without this, nothing judged would come out as good.
            return fitness.against(measured.channel().name()).stream()
                    .filter(it -> it.grade() == Fitness.Grade.UNFIT && !RecordingFitness.leavesPulses(it))
                    .findFirst()
                    .map(it -> LineJudge.state(item, LineResult.INCONCLUSIVE, LineJudge.unfit(it)))
                    .orElseGet(() -> LineJudge.state(item, LineResult.PASS, ""));
        }
        if (measured.status() == Status.UNREADABLE) {
            // Too coarse or too noisy is a finding about the recording: it neither clears nor blames the sensor.
            List<Fitness> against = fitness.against(measured.channel().name());
            String why =
                    against.isEmpty() ? measured.statusReason() : against.get(0).reason();
            return LineJudge.state(item, LineResult.INCONCLUSIVE, "the recording cannot show the signal: " + why);
        }
        return LineJudge.state(item, LineResult.FAIL, unusable(measured));
    }

    /** Why a channel has nothing to judge, empty if it has. */
    static String unusable(ChannelMeasurement measured) {
        if (measured.role() != Role.PWM) {
            return "the channel was read as " + measured.role().word() + ", not as pwm";
        }
        if (measured.status() == Status.OK) {
            return "";
        }
        return LineJudge.join("the channel is " + measured.status().word(), measured.statusReason());
    }
}
