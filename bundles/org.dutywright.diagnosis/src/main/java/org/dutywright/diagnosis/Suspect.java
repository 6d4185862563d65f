// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.util.List;
import java.util.Optional;

/**
 * A likely place of the fault.
 *
 * @param place where
 * @param kind what it would be there, empty if nothing tells
 * @param channels the channels concerned
 * @param weight share of belief; the weights of all suspects sum to 1
 * @param reasonsFor sentences, each naming the measured fact it rests on
 * @param reasonsAgainst likewise
 */
public record Suspect(
        Place place,
        Optional<Kind> kind,
        List<String> channels,
        double weight,
        List<String> reasonsFor,
        List<String> reasonsAgainst) {

    /** Where a fault may sit. */
    public enum Place {
        SENSOR("sensor"),
        SIGNAL_WIRE("signal-wire"),
        SUPPLY("supply"),
        GROUND("ground"),
        MODULE_INPUT("module-input"),
        LINKAGE("linkage"),
        INTERFERENCE("interference"),
        RECORDING("recording"),
        NONE("none");

        private final String word;

        Place(String word) {
            this.word = word;
        }

        /** The word used in files. */
        public String word() {
            return word;
        }
    }

    /** What a fault may be. */
    public enum Kind {
        OPEN("open"),
        SHORT_TO_GROUND("short-to-ground"),
        SHORT_TO_SUPPLY("short-to-supply"),
        SHORT_BETWEEN_CHANNELS("short-between-channels"),
        HIGH_RESISTANCE("high-resistance"),
        WEAK_PULL_UP("weak-pull-up"),
        INTERMITTENT("intermittent"),
        WORN_SPOT("worn-spot"),
        DRIFT("drift"),
        FREQUENCY("frequency"),
        RESET("reset"),
        SWAPPED_LEADS("swapped-leads");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** The word used in files. */
        public String word() {
            return word;
        }
    }
}
