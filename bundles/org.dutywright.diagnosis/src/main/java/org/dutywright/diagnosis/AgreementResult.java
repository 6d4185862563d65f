// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

/**
 * How far two channels lie apart, in percent of travel at the same instant.
 *
 * @param maxDifferencePercent largest absolute difference
 * @param limitPercent tolerance at rest
 * @param movingLimitPercent tolerance while moving; the same as at rest if the sensor text has none
 * @param longestBeyondLimitSeconds longest unbroken time beyond the limit in force
 * @param longestStartSeconds where that time begins; 0 if there is none
 * @param confirmationSeconds how long it may last
 * @param wouldFlag whether a module with this tolerance and confirmation time would log a fault
 * @param channels the two channels compared, by name
 */
public record AgreementResult(
        double maxDifferencePercent,
        double limitPercent,
        double movingLimitPercent,
        double longestBeyondLimitSeconds,
        double longestStartSeconds,
        double confirmationSeconds,
        boolean wouldFlag,
        java.util.List<String> channels) {}
