// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.List;
import java.util.Optional;
import org.dutywright.diagnosis.Suspect;
import org.dutywright.diagnosis.Suspect.Kind;

/** The one measurement that would tell the first suspects apart (common practice, no source). */
final class NextMeasurement {
    private static final String PROCEDURE = "Following the maker's procedure, ";

    private NextMeasurement() {}

    /**
     * The measurement.
     *
     * @param suspects the most likely first
     * @param evidence empty where nothing was looked for because everything conforms
     */
    static String of(List<Suspect> suspects, Optional<Evidence> evidence) {
        Suspect first = suspects.get(0);
        Kind kind = first.kind().orElse(null);
        String channels = first.channels().isEmpty() ? "the signals" : String.join(" and ", first.channels());
        return switch (first.place()) {
            case NONE -> "No further measurement is called for.";
            case RECORDING -> recording(kind, channels, evidence);
            case SUPPLY, GROUND ->
                PROCEDURE + "record the voltage between the sensor's supply and ground pins, and its ground pin against"
                        + " battery negative, together with the signals until the fault shows again.";
            case INTERFERENCE ->
                PROCEDURE + "record again with other loads switched one by one and see whether the spikes on "
                        + channels + " follow a load.";
            case LINKAGE ->
                PROCEDURE + "compare the position of the pedal or lever with the travel of both channels at its two"
                        + " stops.";
            case MODULE_INPUT ->
                PROCEDURE + "unplug the sensor and measure at the module's pin of " + channels
                        + " whether the line reaches the rail, and how fast.";
            case SIGNAL_WIRE -> wire(kind, channels);
            case SENSOR -> sensor(kind, channels);
        };
    }

    private static String recording(Kind kind, String channels, Optional<Evidence> evidence) {
        if (kind == Kind.SWAPPED_LEADS) {
            return PROCEDURE + "check on the wiring diagram which wire each lead is on, then record again.";
        }
        if (evidence.isPresent()
                && evidence.get().channels().size()
                        < evidence.get().sensor().channels().size()) {
            return PROCEDURE + "record all channels of the sensor at once, and name them if their columns are not.";
        }
        if (evidence.isPresent() && evidence.get().findings().isEmpty()) {
            return PROCEDURE + "measure what is inconclusive again with less uncertainty: for longer, at a higher"
                    + " sample rate, or with a recorder whose clock and range are calibrated.";
        }
        return PROCEDURE + "record " + channels
                + " again at a higher sample rate and within the input range, and check again.";
    }

    private static String wire(Kind kind, String channels) {
        if (kind == Kind.SHORT_BETWEEN_CHANNELS) {
            return PROCEDURE + "unplug sensor and module and measure the resistance between the two signal wires.";
        }
        if (kind == Kind.INTERMITTENT) {
            return PROCEDURE + "record " + channels + " at the sensor's connector and at the module's pin at once while"
                    + " the harness is moved: pulses that leave the sensor and do not arrive are lost in the wire.";
        }
        return PROCEDURE + "measure " + channels
                + " at the sensor's connector as well, and at the module's pin with the"
                + " sensor unplugged: a level that differs between the ends is the wire's, one that goes to the rail"
                + " with the sensor unplugged was the sensor's.";
    }

    private static String sensor(Kind kind, String channels) {
        if (kind == Kind.WORN_SPOT) {
            return PROCEDURE + "sweep the travel slowly several times both ways and see whether the jumps of "
                    + channels + " come back at the same place.";
        }
        if (kind == Kind.DRIFT || kind == Kind.FREQUENCY) {
            return PROCEDURE + "record " + channels
                    + " at the sensor's connector, at both stops, and compare with a recording of a good sensor.";
        }
        return wire(kind == Kind.RESET ? Kind.INTERMITTENT : null, channels);
    }
}
