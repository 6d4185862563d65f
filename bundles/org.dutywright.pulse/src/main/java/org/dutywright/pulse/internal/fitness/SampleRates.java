// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.ArrayList;
import java.util.List;
import org.dutywright.capture.Capture;
import org.dutywright.capture.StatedRate;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.internal.Words;

/**
 * {@code capture.sampleRate}: where a rate is stated beside what the time base rests on, both must agree, or it is not
 * known which one frequencies and durations should rest on.
 */
final class SampleRates {
    private static final String ITEM = "capture.sampleRate";
    /** No clock of a recorder is off by so much. */
    private static final double LEAST = 1e-3;
    /** Stamps that are uneven have a typical step only. */
    private static final double LEAST_UNEVEN = 0.05;

    private SampleRates() {}

    static Fitness judge(Capture capture) {
        if (!(capture.timeBase().stepSeconds() > 0)) {
            return new Fitness(ITEM, Grade.GOOD, "too few samples to tell their distance");
        }
        boolean even = capture.timeBase().sampleRateHz().isPresent();
        double used = 1 / capture.timeBase().stepSeconds();
        List<String> others = new ArrayList<>();
        for (StatedRate stated : capture.statedRates()) {
            double off = Math.abs(stated.sampleRateHz() / used - 1);
            if (off > Math.max(even ? LEAST : LEAST_UNEVEN, stated.relativeTolerance())) {
                others.add(Words.rate(stated.sampleRateHz()) + " by " + stated.origin());
            }
        }
        String fact = Words.of("%s by the time stamps or the rate in use", Words.rate(used));
        if (others.isEmpty()) {
            return new Fitness(
                    ITEM,
                    Grade.GOOD,
                    fact + (capture.statedRates().isEmpty() ? ", and no other is stated" : ", as stated elsewhere"));
        }
        return new Fitness(
                ITEM,
                Grade.POOR,
                fact + ", but " + String.join(" and ", others)
                        + "; frequencies and durations may be wrong by that factor, so find out which is right and correct"
                        + " the other");
    }
}
