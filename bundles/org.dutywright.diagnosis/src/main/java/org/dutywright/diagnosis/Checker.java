// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Channel;
import org.dutywright.capture.Progress;
import org.dutywright.diagnosis.internal.lines.Lines;
import org.dutywright.diagnosis.internal.lines.SensorFitness;
import org.dutywright.diagnosis.internal.lines.SupplyVoltage;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.ChannelPlan.Travel;
import org.dutywright.pulse.InputThresholds;
import org.dutywright.pulse.Role;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.SensorChannel;

/**
 * Compares a measured capture with a sensor of the catalogue. First {@link #match}, then {@link #plans}, then the
 * capture is measured with these plans, then {@link #check}.
 *
 * <p>Lines carry the sensor's channel names: {@code NAME.signal}, {@code .frequency}, {@code .lowLevel},
 * {@code .highLevel}, {@code .transition.rise}, {@code .transition.fall}, {@code .duty}, {@code .duty.released},
 * {@code .duty.pressed}, {@code .events.KIND}, and {@code supply} for the whole.
 */
public final class Checker {
    private Checker() {}

    /**
     * Matches the channels of a capture to those of a sensor, by name, else by order. By order only channels count
     * that may carry pulses: the user gave them no other role, and they are not named as a supply.
     *
     * @param userPlans what the user says, by the capture's names
     */
    public static ChannelMatch match(Sensor sensor, Capture capture, Map<String, ChannelPlan> userPlans) {
        Set<String> wanted =
                Set.copyOf(sensor.channels().stream().map(SensorChannel::name).toList());
        List<String> candidates = capture.channels().stream()
                .map(Channel::name)
                .filter(name -> wanted.contains(name) || mayCarryPulses(name, userPlans))
                .toList();
        return ChannelMatch.of(sensor, candidates);
    }

    private static boolean mayCarryPulses(String name, Map<String, ChannelPlan> userPlans) {
        Optional<Role> role = Optional.ofNullable(userPlans.get(name)).flatMap(ChannelPlan::role);
        return role.map(it -> it == Role.PWM).orElse(!SupplyVoltage.NAMES.contains(name));
    }

    /**
     * What measuring should know: for each matched channel the role PWM, the active level, end points of travel,
     * longest transition and thresholds of the input of the sensor text. What the user says about a channel goes before.
     *
     * @param userPlans by the capture's names
     * @return by the capture's names; the user's plans of other channels unchanged
     */
    public static Map<String, ChannelPlan> plans(
            Sensor sensor, ChannelMatch match, Map<String, ChannelPlan> userPlans) {
        Map<String, ChannelPlan> plans = new LinkedHashMap<>(userPlans);
        for (SensorChannel channel : sensor.channels()) {
            String captureName = match.captureNames().get(channel.name());
            if (captureName != null) {
                plans.merge(captureName, plan(channel), Checker::userFirst);
            }
        }
        return plans;
    }

    private static ChannelPlan plan(SensorChannel channel) {
        return new ChannelPlan(
                Optional.of(Role.PWM),
                Optional.of(channel.activeHigh() ? ActiveLevel.HIGH : ActiveLevel.LOW),
                channel.duty().map(duty -> new Travel(duty.releasedPercent(), duty.pressedPercent())),
                channel.transitionMaxSeconds(),
                channel.input().map(input -> new InputThresholds(input.risingVolts(), input.fallingVolts())));
    }

    private static ChannelPlan userFirst(ChannelPlan user, ChannelPlan sensor) {
        return new ChannelPlan(
                user.role().or(sensor::role),
                user.active().or(sensor::active),
                user.travel().or(sensor::travel),
                user.transitionMaxSeconds().isPresent() ? user.transitionMaxSeconds() : sensor.transitionMaxSeconds(),
                user.input().or(sensor::input));
    }

    /**
     * Judges.
     *
     * @param measured with {@link #plans}; must stay open while this runs
     * @param progress asked for cancelling; gets one task without a known amount of work
     * @throws IOException if the cycles or samples cannot be read back
     * @throws org.dutywright.capture.CancelledException if the user asked to stop
     */
    public static CheckResult check(
            CaptureMeasurement measured, Sensor sensor, ChannelMatch match, CheckSettings settings, Progress progress)
            throws IOException {
        progress.begin("Checking against " + sensor.id(), 0);
        CaptureMeasurement measurement = SensorFitness.extended(measured, sensor, match, settings);
        List<Line> lines = Lines.of(measurement, sensor, match, settings, progress);
        Agreement.Outcome agreement = Agreement.of(measurement, sensor, match, progress);
        Verdict verdict = Verdict.of(lines, agreement.result());
        Suspects.Ranking ranking =
                Suspects.rank(measurement, sensor, match, verdict, lines, agreement.result(), progress);
        return new CheckResult(
                sensor,
                match,
                verdict,
                lines,
                agreement.result(),
                agreement.absent(),
                Lines.absentLimits(sensor),
                ranking.suspects(),
                ranking.nextMeasurement(),
                measurement);
    }
}
