// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.dutywright.capture.Capture;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.pulse.StateLevels;

/**
 * By how much the two states of a channel moved at a level shift: mean of the samples of each state in the twenty
 * periods after it less that in the twenty before.
 *
 * @param startSeconds where the shift begins
 * @param lowVolts move of the low level, positive upward
 * @param highVolts move of the high level
 */
record LevelMove(double startSeconds, double lowVolts, double highVolts) {
    private static final int MOST = 50;
    private static final int PERIODS = 20;

    /** The moves of the first level shifts of a channel. */
    static List<LevelMove> of(Capture capture, ChannelMeasurement channel) throws IOException {
        List<LevelMove> moves = new ArrayList<>();
        if (channel.levels().isEmpty() || channel.medianPeriodSeconds().isEmpty()) {
            return moves;
        }
        StateLevels levels = channel.levels().get();
        double period = channel.medianPeriodSeconds().get();
        SampleProbe probe = SampleProbe.of(capture, channel.channel().name());
        for (PulseEvent event : channel.events()) {
            if (event.kind() == EventKind.LEVEL_SHIFT && moves.size() < MOST) {
                add(moves, probe, event, period, levels.reference(50));
            }
        }
        return moves;
    }

    private static void add(List<LevelMove> moves, SampleProbe probe, PulseEvent event, double period, double threshold)
            throws IOException {
        double start = event.startSeconds();
        double end = Math.max(start + 2 * period, Math.min(event.endSeconds(), start + PERIODS * period));
        Span before = new Span(start - PERIODS * period, start - period);
        Span after = new Span(start + period, end);
        OptionalDouble lowBefore = probe.stateMean(before, threshold, false);
        OptionalDouble highBefore = probe.stateMean(before, threshold, true);
        OptionalDouble lowAfter = probe.stateMean(after, threshold, false);
        OptionalDouble highAfter = probe.stateMean(after, threshold, true);
        if (lowBefore.isPresent() && highBefore.isPresent() && lowAfter.isPresent() && highAfter.isPresent()) {
            moves.add(new LevelMove(
                    start,
                    lowAfter.getAsDouble() - lowBefore.getAsDouble(),
                    highAfter.getAsDouble() - highBefore.getAsDouble()));
        }
    }
}
