// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.util.List;
import java.util.OptionalDouble;

/**
 * How far two channels lie apart, in percent of travel at the same instant.
 *
 * @param maxDifferencePercent largest absolute difference
 * @param maxDifferenceAtSeconds where it is
 * @param limitPercent tolerance at rest
 * @param movingLimitPercent tolerance while moving; the same as at rest if the sensor text has none
 * @param longestBeyondLimitSeconds longest unbroken time beyond the limit in force
 * @param longestStartSeconds where that time begins, empty if the limit was never passed
 * @param confirmationSeconds how long it may last
 * @param wouldFlag whether a module with this tolerance and confirmation time would log a fault
 * @param comparedInstants number of instants at which both channels had a travel
 * @param channels the two channels compared, by the sensor's names
 */
public record AgreementResult(
        double maxDifferencePercent,
        double maxDifferenceAtSeconds,
        double limitPercent,
        double movingLimitPercent,
        double longestBeyondLimitSeconds,
        OptionalDouble longestStartSeconds,
        double confirmationSeconds,
        boolean wouldFlag,
        long comparedInstants,
        List<String> channels) {
    /** Copies the names. */
    public AgreementResult {
        channels = List.copyOf(channels);
    }
}
