// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import java.util.Optional;
import java.util.OptionalDouble;

/** Something wrong at one place of one channel. Times are those of the recording. */
public sealed interface Fault {

    /** The channel concerned. */
    String channel();

    /** Where it begins. */
    double startSeconds();

    /** Where it ends; the same as its start for what happens at an instant. */
    double endSeconds();

    /** The word for it in a scenario text. */
    String kind();

    /** A fault that happens at the first fitting pulse or edge from an instant on. */
    sealed interface AtInstant extends Fault {
        @Override
        default double endSeconds() {
            return startSeconds();
        }
    }

    /** Whether an instant lies in its span: the start belongs to it, the end does not. */
    default boolean covers(double seconds) {
        return seconds >= startSeconds() && seconds < endSeconds();
    }

    /** The next {@code pulses} active pulses are absent; the carrier runs on. */
    record MissingPulse(String channel, double startSeconds, int pulses) implements AtInstant {
        @Override
        public String kind() {
            return "missing-pulse";
        }
    }

    /** The next {@code pulses} active pulses reach only a share of the swing. */
    record Runt(String channel, double startSeconds, int pulses, double reachPercent) implements AtInstant {
        @Override
        public String kind() {
            return "runt";
        }
    }

    /** Further pairs of transitions after the next edge into ({@code afterActive}) or out of the active level. */
    record Bounce(String channel, double startSeconds, int pairs, double spacingSeconds, boolean afterActive)
            implements AtInstant {
        @Override
        public String kind() {
            return "bounce";
        }
    }

    /** A spike into the other state, to a share of the swing, at exactly this instant. */
    record ExtraPulse(String channel, double startSeconds, double widthSeconds, double reachPercent) implements Fault {
        @Override
        public double endSeconds() {
            return startSeconds + widthSeconds;
        }

        @Override
        public String kind() {
            return "extra-pulse";
        }
    }

    /** The path of the signal opens while the carrier runs on; a resistor pulls the open end to {@code volts}. */
    record SignalOpen(String channel, double startSeconds, double endSeconds, double volts) implements Fault {
        @Override
        public String kind() {
            return "signal-open";
        }
    }

    /**
     * The sensor loses its supply or ground and starts again with another phase.
     *
     * @param restartSeconds time from the return of the supply to the first active edge
     * @param volts where the signal stands meanwhile
     * @param firstPeriodSeconds length of the odd first period, empty if it is as the others
     * @param supplyLine whether the supply was lost (a recorded supply channel shows it) or the ground
     */
    record SupplyLoss(
            String channel,
            double startSeconds,
            double endSeconds,
            double restartSeconds,
            double volts,
            OptionalDouble firstPeriodSeconds,
            boolean supplyLine)
            implements Fault {
        @Override
        public String kind() {
            return "supply-loss";
        }

        /** Instant of the first active edge after the loss. */
        public double firstEdgeSeconds() {
            return endSeconds + restartSeconds;
        }
    }

    /** A resistance in the sensor's ground lifts the low level, and the high one too if that follows the ground. */
    record GroundLift(String channel, double startSeconds, double endSeconds, double volts, boolean liftsHigh)
            implements Fault {
        @Override
        public String kind() {
            return "ground-lift";
        }
    }

    /** The levels move by so many volts. */
    record LevelShift(String channel, double startSeconds, double endSeconds, double lowVolts, double highVolts)
            implements Fault {
        @Override
        public String kind() {
            return "level-shift";
        }
    }

    /** The carrier is wrong by a factor; its phase runs on without a jump. */
    record Frequency(String channel, double startSeconds, double endSeconds, double factor) implements Fault {
        @Override
        public String kind() {
            return "frequency";
        }
    }

    /** The duty is wrong: gain · duty + offset. */
    record Ratio(String channel, double startSeconds, double endSeconds, double gain, double offsetPercent)
            implements Fault {
        @Override
        public String kind() {
            return "ratio";
        }
    }

    /** A worn spot: the duty is off by so many points while the travel stands within half the width of a place. */
    record DutyJump(
            String channel,
            double startSeconds,
            double endSeconds,
            double travelPercent,
            double widthPercent,
            double offsetPercent)
            implements Fault {
        @Override
        public String kind() {
            return "duty-jump";
        }
    }

    /** The signal stands at a level, whatever the sensor does. */
    record Stuck(String channel, double startSeconds, double endSeconds, boolean high, double volts) implements Fault {
        @Override
        public String kind() {
            return high ? "stuck-high" : "stuck-low";
        }
    }

    /** Edges that begin in its span get another shape; they begin where healthy ones would, so their middle is late. */
    record SlowEdges(
            String channel, double startSeconds, double endSeconds, Optional<EdgeShape> rise, Optional<EdgeShape> fall)
            implements Fault {
        @Override
        public String kind() {
            return "slow-edges";
        }
    }

    /** More white noise, of this RMS, on top of the channel's own. */
    record NoiseBurst(String channel, double startSeconds, double endSeconds, double rmsVolts) implements Fault {
        @Override
        public String kind() {
            return "noise-burst";
        }
    }
}
