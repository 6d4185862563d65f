// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.parse;

import java.util.Arrays;
import java.util.List;

/** The kinds of faults of a scenario text, and what the text must say about their place. */
enum FaultKind {
    MISSING_PULSE("missing-pulse", Time.INSTANT, false),
    RUNT("runt", Time.INSTANT, false),
    BOUNCE("bounce", Time.INSTANT, false),
    EXTRA_PULSE("extra-pulse", Time.INSTANT, false),
    SIGNAL_OPEN("signal-open", Time.SPAN, false),
    SUPPLY_LOSS("supply-loss", Time.SPAN, true),
    GROUND_LIFT("ground-lift", Time.SPAN_OR_ALL, true),
    LEVEL_SHIFT("level-shift", Time.SPAN_OR_ALL, false),
    FREQUENCY("frequency", Time.SPAN_OR_ALL, false),
    RATIO("ratio", Time.SPAN_OR_ALL, false),
    DUTY_JUMP("duty-jump", Time.SPAN_OR_ALL, false),
    STUCK_LOW("stuck-low", Time.SPAN_OR_ALL, false),
    STUCK_HIGH("stuck-high", Time.SPAN_OR_ALL, false),
    SLOW_EDGES("slow-edges", Time.SPAN_OR_ALL, false),
    NOISE_BURST("noise-burst", Time.SPAN, false);

    /** How its place in time is stated. */
    enum Time {
        /** {@code at}. */
        INSTANT,
        /** {@code from} and {@code to}. */
        SPAN,
        /** {@code from}, else the start, and {@code to}, else the end of the recording. */
        SPAN_OR_ALL
    }

    private final String word;
    private final Time time;
    private final boolean wholeSensor;

    FaultKind(String word, Time time, boolean wholeSensor) {
        this.word = word;
        this.time = time;
        this.wholeSensor = wholeSensor;
    }

    Time time() {
        return time;
    }

    /** Whether it meets all channels where none is named. */
    boolean wholeSensor() {
        return wholeSensor;
    }

    static List<String> words() {
        return Arrays.stream(values()).map(kind -> kind.word).toList();
    }

    static FaultKind of(String word) {
        return Arrays.stream(values())
                .filter(kind -> kind.word.equals(word))
                .findFirst()
                .orElseThrow();
    }
}
