// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.util.Locale;
import org.dutywright.pulse.Cycle;
import org.dutywright.units.UnitPrinter;

/** The columns of the table of cycles, those first that must be in sight in a narrow window. */
enum CycleColumn {
    INDEX("Cycle", "1,000,000"),
    START("Start", "10000.000000 s"),
    DUTY("Duty", "100.000 %"),
    FREQUENCY("Frequency", "199.999 Hz"),
    PERIOD("Period", "5.00000 ms"),
    PULSE_DURATION("Pulse duration", "5.00000 ms"),
    MEAN("Mean", "10.0000 mV"),
    DISTURBED("State", "disturbed");

    private static final int DIGITS = 6;

    private final String label;
    private final String widest;

    CycleColumn(String label, String widest) {
        this.label = label;
        this.widest = widest;
    }

    String label() {
        return label;
    }

    /** A text that is as wide as this column's texts become. */
    String widest() {
        return widest;
    }

    /** A cell; {@code unit} is that of the channel. */
    String text(Cycle cycle, String unit) {
        return switch (this) {
            case INDEX -> String.format(Locale.ROOT, "%,d", cycle.index());
            case START -> String.format(Locale.ROOT, "%.6f s", cycle.startSeconds());
            case PERIOD -> UnitPrinter.print(cycle.periodSeconds(), "s", DIGITS);
            case FREQUENCY -> UnitPrinter.print(cycle.frequencyHz(), "Hz", DIGITS);
            case PULSE_DURATION -> UnitPrinter.print(cycle.pulseDurationSeconds(), "s", DIGITS);
            case DUTY -> UnitPrinter.print(cycle.dutyPercent(), "%", DIGITS);
            case MEAN -> UnitPrinter.print(cycle.mean(), unit, DIGITS);
            case DISTURBED -> cycle.disturbed() ? Messages.disturbed : "";
        };
    }
}
