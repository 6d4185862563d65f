// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.coverage;

import java.io.IOException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.StateLevels;
import org.dutywright.pulse.Statistic;
import org.dutywright.pulse.Uncertain;

/** What is true of a wave, over the very cycles that were measured, and how it compares. */
final class Truth {
    private final Wave wave;
    private final Corner corner;
    private final double low;
    private final double high;
    private final double clock;

    /**
     * The truth.
     *
     * @param clock relative error of the recorder's clock: an instant t is recorded as t (1 + clock)
     */
    Truth(Wave wave, Corner corner, double low, double high, double clock) {
        this.wave = wave;
        this.corner = corner;
        this.low = low;
        this.high = high;
        this.clock = clock;
    }

    /** What was measured of each quantity, with the true values. */
    record Comparison(Map<Quantity, Pair> pairs, long disturbed) {}

    /** A measured value and the true one. */
    record Pair(Uncertain measured, double truth) {
        boolean holds() {
            return Math.abs(measured.value() - truth) <= measured.u95();
        }
    }

    Comparison compare(ChannelMeasurement channel) throws IOException {
        Means means = means(channel);
        Map<Quantity, Pair> pairs = new EnumMap<>(Quantity.class);
        for (Quantity quantity : Quantity.values()) {
            Optional<Uncertain> found = quantity.isLevel()
                    ? channel.levels().map(it -> level(it, quantity))
                    : found(channel, quantity.id());
            found.ifPresent(it -> pairs.put(quantity, new Pair(it, truth(quantity, means))));
        }
        return new Comparison(pairs, channel.disturbedCount());
    }

    private static Uncertain level(StateLevels levels, Quantity quantity) {
        return quantity == Quantity.LOW_LEVEL ? levels.low() : levels.high();
    }

    private static Optional<Uncertain> found(ChannelMeasurement channel, String id) {
        Outcome outcome = channel.results().get(id).outcome();
        if (outcome instanceof Outcome.OfCycles cycles) {
            Statistic it = cycles.statistic();
            return Optional.of(new Uncertain(it.mean(), it.u(), it.u95(), it.budget()));
        }
        return outcome instanceof Outcome.Single single ? Optional.of(single.value()) : Optional.empty();
    }

    private double truth(Quantity quantity, Means means) {
        return switch (quantity) {
            case FREQUENCY -> means.cycles / means.totalSeconds;
            case PERIOD -> means.totalSeconds / means.cycles;
            case DUTY -> 100 * means.duties / means.cycles;
            case PULSE -> means.pulseSeconds / means.cycles;
            case INPUT_DUTY -> 100 * means.inputDuties / means.cycles;
            case INPUT_PULSE -> means.inputSeconds / means.cycles;
            case SEPARATION -> (means.totalSeconds - means.pulseSeconds) / means.cycles;
            case RMS_VOLTAGE -> Math.sqrt(means.squares / means.totalSeconds);
            case MEAN_VOLTAGE -> means.integral / means.totalSeconds;
            case LOW_LEVEL -> low;
            case HIGH_LEVEL -> high;
            case RISE -> transition(true);
            case FALL -> transition(false);
            case OVERSHOOT_RISE -> 100 * corner.form(true).overshoot();
            case OVERSHOOT_FALL -> 100 * corner.form(false).overshoot();
            case UNDERSHOOT_RISE, UNDERSHOOT_FALL -> 0;
            case JITTER -> Math.sqrt(2) * corner.jitterSeconds();
            case JITTER_RANGE -> means.longestSeconds - means.shortestSeconds;
        };
    }

    private double transition(boolean rising) {
        return corner.form(rising).duration() * corner.scaleSeconds(rising);
    }

    private Means means(ChannelMeasurement channel) throws IOException {
        Means means = new Means();
        CycleTable.Cursor cursor = channel.cycles().cursor();
        for (Cycle cycle = cursor.next(); cycle != null; cycle = cursor.next()) {
            if (!cycle.disturbed()) {
                means.add(nearest(cycle.startSeconds() / (1 + clock)));
            }
        }
        return means;
    }

    // The instant at which the module's input sees a transition.
    private double atInput(int transition) {
        double share = corner.inputShare(wave.rises(transition));
        return wave.passes(transition, low + share * (high - low));
    }

    // Transitions come in turn; those that start cycles are the even ones.
    private int nearest(double seconds) {
        int best = 0;
        for (int i = 0; i + 2 < wave.transitions(); i += 2) {
            if (Math.abs(wave.middle(i) - seconds) < Math.abs(wave.middle(best) - seconds)) {
                best = i;
            }
        }
        return best;
    }

    /** Sums over the true cycles. */
    private final class Means {
        private int cycles;
        private double totalSeconds;
        private double pulseSeconds;
        private double duties;
        private double inputSeconds;
        private double inputDuties;
        private double integral;
        private double squares;
        private double longestSeconds;
        private double shortestSeconds = Double.POSITIVE_INFINITY;

        private void add(int transition) {
            double start = wave.middle(transition);
            double end = wave.middle(transition + 2);
            double pulse = wave.middle(transition + 1) - start;
            cycles++;
            totalSeconds += end - start;
            pulseSeconds += pulse;
            duties += pulse / (end - start);
            double inputStart = atInput(transition);
            double inputPulse = atInput(transition + 1) - inputStart;
            inputSeconds += inputPulse;
            inputDuties += inputPulse / (atInput(transition + 2) - inputStart);
            integral += wave.integral(start, end);
            squares += wave.integralOfSquares(start, end);
            longestSeconds = Math.max(longestSeconds, end - start);
            shortestSeconds = Math.min(shortestSeconds, end - start);
        }
    }
}
