// SPDX-License-Identifier: EPL-2.0
package org.dutywright.units;

/** What a unit measures. */
public enum Dimension {
    VOLTAGE("voltage", "9 V"),
    CURRENT("current", "100 mA"),
    RESISTANCE("resistance", "4.7 kohm"),
    CAPACITANCE("capacitance", "10 nF"),
    TIME("time", "100 us"),
    FREQUENCY("frequency", "180 Hz"),
    SHARE("share", "10 %"),
    SHARE_RATE("share per time", "50 %/s"),
    TEMPERATURE("temperature", "85 °C"),
    LENGTH("length", "12 mm"),
    ANGLE("plane angle", "15 deg");

    private final String word;
    private final String example;

    Dimension(String word, String example) {
        this.word = word;
        this.example = example;
    }

    /** The word for people. */
    public String word() {
        return word;
    }

    /** A quantity of this dimension as one writes it, for messages that say what to write. */
    public String example() {
        return example;
    }
}
