// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.agreement;

import java.io.IOException;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.Progress;
import org.dutywright.diagnosis.AgreementResult;
import org.dutywright.sensor.Sensor.Agreement;

/** Compares channels in travel. */
public final class Comparison {
    /** Flagged first, then the longest beyond its limit, then the largest difference. */
    private static final Comparator<AgreementResult> WORSE = Comparator.comparing(AgreementResult::wouldFlag)
            .thenComparingDouble(AgreementResult::longestBeyondLimitSeconds)
            .thenComparingDouble(AgreementResult::maxDifferencePercent);

    private Comparison() {}

    /**
     * The worst pair of all.
     *
     * @return empty if no pair has an instant at which both have a travel
     */
    public static Optional<AgreementResult> worst(List<TravelChannel> channels, Agreement limits, Progress progress)
            throws IOException {
        Optional<AgreementResult> worst = Optional.empty();
        for (int i = 0; i < channels.size(); i++) {
            for (int k = i + 1; k < channels.size(); k++) {
                Optional<AgreementResult> pair = pair(channels.get(i), channels.get(k), limits, progress);
                if (worst.isEmpty() || (pair.isPresent() && WORSE.compare(pair.get(), worst.get()) > 0)) {
                    worst = pair;
                }
            }
        }
        return worst;
    }

    /** One pair. */
    public static Optional<AgreementResult> pair(
            TravelChannel first, TravelChannel second, Agreement limits, Progress progress) throws IOException {
        AgreementTracker tracker = new AgreementTracker(limits);
        PairWalk.walk(first, second, new RateWindow(tracker), progress);
        return tracker.result(first.name(), second.name());
    }
}
