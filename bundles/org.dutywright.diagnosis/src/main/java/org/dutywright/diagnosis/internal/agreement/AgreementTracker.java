// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.agreement;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.diagnosis.AgreementResult;
import org.dutywright.sensor.Sensor.Agreement;

/**
 * Follows the difference of two channels against the limit in force and keeps the longest unbroken time beyond it.
 * A difference equal to the limit is within it. Each compared instant stands for the time until half-way to its
 * neighbours, so that n cycles beyond the limit in a row count as n periods.
 */
final class AgreementTracker implements RateWindow.JudgedListener {
    /** Rounding of sums of times; far below any recording's step. */
    private static final double ROUNDING_SECONDS = 1e-9;

    private final Agreement limits;
    private long compared;
    private double maxDifference = -1;
    private double maxAtSeconds;
    private boolean beyond;
    private double runStartSeconds;
    private double runEndSeconds;
    private double longestSeconds;
    private double longestStartSeconds;

    AgreementTracker(Agreement limits) {
        this.limits = limits;
    }

    @Override
    public void judged(PairedTravel pair, double startSeconds, double endSeconds, double ratePercentPerSecond) {
        compared++;
        double difference = Math.abs(pair.differencePercent());
        if (difference > maxDifference) {
            maxDifference = difference;
            maxAtSeconds = pair.seconds();
        }
        if (difference <= limitPercent(ratePercentPerSecond)) {
            endRun();
            return;
        }
        if (!beyond) {
            beyond = true;
            runStartSeconds = startSeconds;
        }
        runEndSeconds = endSeconds;
    }

    @Override
    public void broken() {
        endRun();
    }

    /** The result, empty if no instant could be compared. */
    Optional<AgreementResult> result(String first, String second) {
        if (compared == 0) {
            return Optional.empty();
        }
        return Optional.of(new AgreementResult(
                maxDifference,
                maxAtSeconds,
                limits.tolerancePercent(),
                movingLimitPercent(),
                longestSeconds,
                longestSeconds > 0 ? OptionalDouble.of(longestStartSeconds) : OptionalDouble.empty(),
                limits.confirmationSeconds(),
                longestSeconds > 0 && longestSeconds >= limits.confirmationSeconds() - ROUNDING_SECONDS,
                compared,
                List.of(first, second)));
    }

    private double limitPercent(double ratePercentPerSecond) {
        boolean moving = limits.movingAbovePercentPerSecond().isPresent()
                && ratePercentPerSecond > limits.movingAbovePercentPerSecond().getAsDouble();
        return moving ? movingLimitPercent() : limits.tolerancePercent();
    }

    private double movingLimitPercent() {
        return limits.movingPercent().orElse(limits.tolerancePercent());
    }

    private void endRun() {
        if (beyond && runEndSeconds - runStartSeconds > longestSeconds) {
            longestSeconds = runEndSeconds - runStartSeconds;
            longestStartSeconds = runStartSeconds;
        }
        beyond = false;
    }
}
