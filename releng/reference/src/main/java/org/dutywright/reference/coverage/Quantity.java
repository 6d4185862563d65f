// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.coverage;

/** The quantities whose intervals are looked at. */
enum Quantity {
    FREQUENCY("frequency", "frequency"),
    PERIOD("period", "period"),
    DUTY("duty", "duty"),
    PULSE("pulse duration", "pulse-duration"),
    INPUT_DUTY("duty at the input", "input-duty"),
    INPUT_PULSE("pulse at the input", "input-pulse-duration"),
    SEPARATION("separation", "pulse-separation"),
    MEAN_VOLTAGE("mean voltage", "mean-voltage"),
    RMS_VOLTAGE("RMS voltage", "rms-voltage"),
    LOW_LEVEL("low level", ""),
    HIGH_LEVEL("high level", ""),
    RISE("rise", "transition.rise"),
    FALL("fall", "transition.fall"),
    OVERSHOOT_RISE("overshoot, rising", "overshoot.rise"),
    OVERSHOOT_FALL("overshoot, falling", "overshoot.fall"),
    UNDERSHOOT_RISE("undershoot, rising", "undershoot.rise"),
    UNDERSHOOT_FALL("undershoot, falling", "undershoot.fall"),
    JITTER("period jitter", "period-jitter.rms"),
    JITTER_RANGE("jitter, peak to peak", "period-jitter.peak-to-peak");

    private final String words;
    private final String id;

    Quantity(String words, String id) {
        this.words = words;
        this.id = id;
    }

    String words() {
        return words;
    }

    /** Id of the result, empty for levels. */
    String id() {
        return id;
    }

    boolean isLevel() {
        return id.isEmpty();
    }
}
