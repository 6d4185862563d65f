// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.dutywright.capture.Progress;
import org.dutywright.diagnosis.internal.agreement.TravelChannel;
import org.dutywright.diagnosis.internal.lines.DutyBand;
import org.dutywright.diagnosis.internal.lines.Say;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.ChannelPlan.Travel;
import org.dutywright.pulse.Statistic;
import org.dutywright.sensor.Sensor.Duty;

/**
 * Tries whether leads were exchanged or a channel is counted on the other state. Must be asked before any sensor is
 * blamed for its duty: exchanged leads look like a grossly wrong sensor.
 */
final class LeadFitter {
    /** Travel of both channels must then agree this well, in percent, root mean square. */
    private static final double FITTING_RMS_PERCENT = 3;

    /** Travel that differs by more than this is apart beyond any drift of a sensor. */
    private static final double APART_RMS_PERCENT = 10;

    private LeadFitter() {}

    static Optional<LeadFit> find(List<ChannelEvidence> channels, Progress progress) throws IOException {
        List<ChannelEvidence> usable = channels.stream()
                .filter(it -> it.ok()
                        && it.spec().duty().isPresent()
                        && it.statistic("duty").isPresent())
                .toList();
        for (int i = 0; i < usable.size(); i++) {
            for (int k = i + 1; k < usable.size(); k++) {
                Optional<LeadFit> fit = exchanged(usable.get(i), usable.get(k), progress);
                if (fit.isPresent()) {
                    return fit;
                }
            }
        }
        for (ChannelEvidence channel : usable) {
            Optional<LeadFit> fit = otherState(channel, usable, progress);
            if (fit.isPresent()) {
                return fit;
            }
        }
        return Optional.empty();
    }

    private static Optional<LeadFit> exchanged(ChannelEvidence one, ChannelEvidence two, Progress progress)
            throws IOException {
        boolean wrongAsRecorded =
                one.fails("duty") || two.fails("duty") || rms(one, false, two, false, progress) > APART_RMS_PERCENT;
        boolean invertOne = countedHigh(one) != two.spec().activeHigh();
        boolean invertTwo = countedHigh(two) != one.spec().activeHigh();
        if (!wrongAsRecorded || !inBand(one, invertOne, two) || !inBand(two, invertTwo, one)) {
            return Optional.empty();
        }
        double rms = difference(one, two, invertOne, two, one, invertTwo, progress);
        if (rms > FITTING_RMS_PERCENT) {
            return Optional.empty();
        }
        return Optional.of(new LeadFit(
                List.of(one.name(), two.name()),
                String.format(
                        Locale.ROOT,
                        "If %s and %s are exchanged, every duty fits the other's end points and their travel agrees to"
                                + " %.1f %% (root mean square); as recorded it does not.",
                        one.name(),
                        two.name(),
                        rms)));
    }

    private static Optional<LeadFit> otherState(ChannelEvidence channel, List<ChannelEvidence> all, Progress progress)
            throws IOException {
        if (!channel.fails("duty") || !inBand(channel, true, channel)) {
            return Optional.empty();
        }
        Statistic duty = channel.statistic("duty").orElseThrow();
        for (ChannelEvidence other : all) {
            boolean same = other.name().equals(channel.name());
            // Channels that agree as recorded are off together, whatever the other state would show.
            if (!same && rms(channel, false, other, false, progress) <= APART_RMS_PERCENT) {
                return Optional.empty();
            }
            if (!same && !other.fails("duty") && rms(channel, true, other, false, progress) > APART_RMS_PERCENT) {
                return Optional.empty();
            }
        }
        String counted = countedHigh(channel) ? "low" : "high";
        return Optional.of(new LeadFit(
                List.of(channel.name()),
                "Counted on its " + counted + " state, the duty of " + channel.name() + " is "
                        + Say.amount(100 - duty.mean(), "%") + " on average and fits its end points; as counted it is "
                        + Say.amount(duty.mean(), "%") + "."));
    }

    private static boolean countedHigh(ChannelEvidence channel) {
        return channel.measured().active() == ActiveLevel.HIGH;
    }

    private static double rms(
            ChannelEvidence one, boolean invertOne, ChannelEvidence two, boolean invertTwo, Progress progress)
            throws IOException {
        return difference(one, one, invertOne, two, two, invertTwo, progress);
    }

    /** Root mean square of the difference if each column is read with the end points of another channel. */
    private static double difference(
            ChannelEvidence first,
            ChannelEvidence firstAs,
            boolean invertFirst,
            ChannelEvidence second,
            ChannelEvidence secondAs,
            boolean invertSecond,
            Progress progress)
            throws IOException {
        TravelDifference difference =
                TravelDifference.of(as(first, firstAs, invertFirst), as(second, secondAs, invertSecond), progress);
        return difference.count() == 0 ? Double.POSITIVE_INFINITY : difference.rmsPercent();
    }

    private static TravelChannel as(ChannelEvidence column, ChannelEvidence meaning, boolean inverted) {
        Duty duty = meaning.spec().duty().orElseThrow();
        Travel travel = inverted
                ? new Travel(100 - duty.releasedPercent(), 100 - duty.pressedPercent())
                : new Travel(duty.releasedPercent(), duty.pressedPercent());
        return new TravelChannel(column.name(), column.measured().cycles(), travel, column.periodSeconds());
    }

    private static boolean inBand(ChannelEvidence column, boolean inverted, ChannelEvidence meaning) {
        Statistic duty = column.statistic("duty").orElseThrow();
        Optional<DutyBand> band = DutyBand.allowed(meaning.spec().duty().orElseThrow());
        double min = inverted ? 100 - duty.max() : duty.min();
        double max = inverted ? 100 - duty.min() : duty.max();
        return band.isPresent()
                && min >= band.get().lowerOrInfinity()
                && max <= band.get().upperOrInfinity();
    }
}
