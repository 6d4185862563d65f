// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dutywright.diagnosis.AgreementResult;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.LineResult;
import org.dutywright.diagnosis.Verdict;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Fitness;
import org.dutywright.sensor.Sensor;

/**
 * Everything that the rules may rest on.
 *
 * @param sensor the sensor
 * @param verdict what the check came to
 * @param lines all lines
 * @param agreement empty if the channels could not be compared
 * @param channels those of the sensor that have a PWM channel in the capture
 * @param pairs of channels that carry a signal
 * @param moves level moves by the channel's name
 * @param leads another way of connecting under which all would fit
 * @param findings about the recording that are not good
 * @param supply the recorded supply
 * @param supplyDips interruptions shared by several channels during which the recorded supply dipped, and all
 */
record Evidence(
        Sensor sensor,
        Verdict verdict,
        List<Line> lines,
        Optional<AgreementResult> agreement,
        List<ChannelEvidence> channels,
        List<PairEvidence> pairs,
        Map<String, List<LevelMove>> moves,
        Optional<LeadFit> leads,
        List<Fitness> findings,
        Optional<ChannelMeasurement> supply,
        SupplyDips supplyDips) {

    /**
     * What the recorded supply did while several channels were interrupted.
     *
     * @param dipped interruptions with the supply below 90 % of its mean
     * @param looked interruptions looked at; 0 without a recorded supply
     */
    record SupplyDips(int dipped, int looked) {}

    List<ChannelEvidence> othersThan(ChannelEvidence channel) {
        return channels.stream().filter(it -> !it.name().equals(channel.name())).toList();
    }

    List<ChannelEvidence> failing(String what) {
        return channels.stream().filter(it -> it.fails(what)).toList();
    }

    boolean disagree() {
        return agreement.map(AgreementResult::wouldFlag).orElse(false);
    }

    /** Whether two channels show one pattern, which leaves nothing to say of each alone. */
    boolean tiedTogether() {
        return pairs.stream().anyMatch(PairEvidence::samePattern);
    }

    long passed() {
        return lines.stream().filter(it -> it.result() == LineResult.PASS).count();
    }
}
