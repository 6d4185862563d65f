// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * The voltage on a wire that an output pulls down and a resistor pulls up: the states of a carrier, exponential edges,
 * and voltages that faults put on it. The duty of a cycle is what the travel asks for at its start.
 */
final class Wire {
    /** A change of the output. */
    private record Edge(double seconds, boolean high) {}

    /** A voltage that holds for a while, whatever the output does. */
    private record Held(double from, double to, double volts) {}

    private final boolean activeHigh;
    private final double hz;
    private final double phaseSeconds;
    private final DoubleUnaryOperator dutyPercent;
    private final List<double[]> stops = new ArrayList<>();
    private final List<Held> held = new ArrayList<>();
    private final List<Edge> extra = new ArrayList<>();
    private DoubleUnaryOperator lowVolts = t -> 0.4;
    private DoubleUnaryOperator highVolts = t -> 12;
    private double riseTau = 8e-6;
    private double fallTau = 6e-6;
    private Wire tied;

    private Wire(boolean activeHigh, double hz, double phaseSeconds, DoubleUnaryOperator dutyPercent) {
        this.activeHigh = activeHigh;
        this.hz = hz;
        this.phaseSeconds = phaseSeconds;
        this.dutyPercent = dutyPercent;
    }

    static Wire activeHigh(double hz, double phaseSeconds, DoubleUnaryOperator dutyPercent) {
        return new Wire(true, hz, phaseSeconds, dutyPercent);
    }

    static Wire activeLow(double hz, double phaseSeconds, DoubleUnaryOperator dutyPercent) {
        return new Wire(false, hz, phaseSeconds, dutyPercent);
    }

    /** A wire without pulses. */
    static Wire steady(DoubleUnaryOperator volts) {
        Wire wire = new Wire(true, 1, 0, t -> 0);
        wire.lowVolts = volts;
        return wire;
    }

    /** The output stops and its carrier starts anew, with an active edge, after the stop. */
    Wire stops(double from, double restartSeconds) {
        stops.add(new double[] {from, restartSeconds});
        return this;
    }

    /** The wire stands at a voltage while the carrier runs on. */
    Wire held(double from, double to, double volts) {
        held.add(new Held(from, to, volts));
        return this;
    }

    /** A pulse to the other state. */
    Wire spike(double seconds, double widthSeconds) {
        extra.add(new Edge(seconds, true));
        extra.add(new Edge(seconds + widthSeconds, false));
        return this;
    }

    Wire low(DoubleUnaryOperator volts) {
        lowVolts = volts;
        return this;
    }

    Wire high(DoubleUnaryOperator volts) {
        highVolts = volts;
        return this;
    }

    Wire edges(double riseTauSeconds, double fallTauSeconds) {
        riseTau = riseTauSeconds;
        fallTau = fallTauSeconds;
        return this;
    }

    /** The wire touches another: either output pulls both down. */
    Wire tiedTo(Wire other) {
        tied = other;
        return this;
    }

    double[] sample(double sampleRateHz, double durationSeconds) {
        double[] samples = new double[(int) Math.round(durationSeconds * sampleRateHz)];
        // Finer steps than samples, so that edges lie between samples.
        int fine = 8;
        double step = 1 / sampleRateHz / fine;
        States own = new States(durationSeconds);
        States other = tied == null ? null : tied.new States(durationSeconds);
        double volts = lowVolts.applyAsDouble(0);
        for (int i = 0; i < samples.length * fine; i++) {
            double seconds = i * step;
            boolean high = own.at(seconds) && (other == null || other.at(seconds));
            double target = high ? highVolts.applyAsDouble(seconds) : lowVolts.applyAsDouble(seconds);
            double tau = target > volts ? riseTau : fallTau;
            volts += (target - volts) * -Math.expm1(-step / tau);
            for (Held it : held) {
                if (seconds >= it.from() && seconds < it.to()) {
                    volts = it.volts();
                }
            }
            if (i % fine == 0) {
                samples[i / fine] = volts;
            }
        }
        return samples;
    }

    /** The states over time, asked for in rising order. */
    private final class States {
        private final List<Edge> edges = new ArrayList<>();
        private int next;
        private boolean high = !activeHigh;

        States(double untilSeconds) {
            double start = phaseSeconds;
            List<double[]> left = new ArrayList<>(stops);
            while (start < untilSeconds) {
                double fall = start + dutyPercent.applyAsDouble(start) / 100 / hz;
                boolean stopped = !left.isEmpty() && left.get(0)[0] < start + 1 / hz;
                double until = stopped ? left.get(0)[0] : Double.POSITIVE_INFINITY;
                add(start, activeHigh, until);
                add(fall, !activeHigh, until);
                if (stopped) {
                    // Without its output the wire goes to the pull-up.
                    add(until, true, Double.POSITIVE_INFINITY);
                    start = left.remove(0)[1];
                    add(start - 1e-4, !activeHigh, Double.POSITIVE_INFINITY);
                } else {
                    start += 1 / hz;
                }
            }
        }

        private void add(double seconds, boolean toHigh, double until) {
            if (seconds < until) {
                edges.add(new Edge(seconds, toHigh));
            }
        }

        boolean at(double seconds) {
            while (next < edges.size() && edges.get(next).seconds() <= seconds) {
                high = edges.get(next++).high();
            }
            boolean inverted = false;
            for (Edge edge : extra) {
                if (edge.seconds() <= seconds) {
                    inverted = edge.high();
                }
            }
            return high ^ inverted;
        }
    }
}
