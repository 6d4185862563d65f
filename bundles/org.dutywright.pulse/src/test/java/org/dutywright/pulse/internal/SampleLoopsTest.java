// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** The loops over samples that are written for speed, beside the obvious way to write them. */
class SampleLoopsTest {
    private static final int MOST = 2600;

    /** Sums of at most 2600 terms of size 1 to 2600 in another order differ by some units in the last place of the largest. */
    private static final Offset<Double> ROUNDING = within(1e-9);

    private final Random random = new Random(11);
    private final double[] values = random.doubles(MOST + 20, -1, 1).toArray();

    @Test
    void momentsOfAnyStretchAreThoseOfOneSampleAfterTheOther() {
        StretchMoments moments = new StretchMoments();
        for (int length = 0; length < MOST; length += length < 40 ? 1 : 97) {
            int from = random.nextInt(20);
            double sum = 0;
            double squares = 0;
            double rising = 0;
            for (int i = 0; i < length; i++) {
                double off = values[from + i] - 0.25;
                sum += off;
                squares += off * off;
                rising += i * off;
            }
            moments.of(values, from, from + length, 0.25);
            assertThat(moments.sum()).isCloseTo(sum, ROUNDING);
            assertThat(moments.squares()).isCloseTo(squares, ROUNDING);
            assertThat(moments.rising()).isCloseTo(rising, ROUNDING);
        }
    }

    @Test
    void sumsAndExtremesOfAnyStretchAreThoseOfOneSampleAfterTheOther() {
        for (int length = 1; length < MOST; length += length < 40 ? 1 : 97) {
            int from = random.nextInt(20);
            int to = from + length;
            double sum = 0;
            double squares = 0;
            double neighbours = 0;
            double least = values[from];
            double most = values[from];
            for (int i = from; i < to; i++) {
                sum += values[i];
                squares += (values[i] - 0.25) * (values[i] - 0.25);
                neighbours += i + 1 < to ? values[i] * values[i + 1] : 0;
                least = Math.min(least, values[i]);
                most = Math.max(most, values[i]);
            }
            assertThat(Sums.of(values, from, to)).isCloseTo(sum, ROUNDING);
            assertThat(Sums.ofSquares(values, from, to, 0.25)).isCloseTo(squares, ROUNDING);
            assertThat(Sums.ofNeighbours(values, from, to)).isCloseTo(neighbours, ROUNDING);
            assertThat(Sums.least(values, from, to)).isEqualTo(least);
            assertThat(Sums.most(values, from, to)).isEqualTo(most);
        }
    }

    @Test
    void binsHoldWhatASampleByItselfWouldAdd() {
        double[] wild = values.clone();
        wild[3] = 1e300;
        wild[4] = -1e300;
        wild[5] = 1;
        int bins = 64;
        double scale = 40;
        long[][] rows = new long[3][bins];
        long[][] expected = new long[3][bins];
        BinCounter counter = new BinCounter(-0.8, scale, rows);
        for (int part = 0; part < 6; part++) {
            int row = part / 2;
            int from = random.nextInt(20);
            int to = from + random.nextInt(MOST);
            counter.count(row, wild, from, to);
            for (int i = from; i < to; i++) {
                long place = (long) ((wild[i] + 0.8) * scale);
                expected[row][(int) Math.max(0, Math.min(place, bins - 1))]++;
            }
        }
        counter.finish();
        assertThat(rows).isDeepEqualTo(expected);
    }

    // The series of the description, each of its terms by itself, on a stretch of instants that lie on a straight line.
    @Test
    void keptSamplingErrorIsThatOfTheSeriesTermByTerm() {
        double[] periods = {50.25, 1000.125, 99_999.0625, 33.4};
        for (double period : periods) {
            int edges = 32;
            SamplingPhases phases = new SamplingPhases(1);
            for (int i = 0; i < edges; i++) {
                phases.add(i * period);
            }
            double variance = 0;
            double rest = 1.0 / 12;
            double coherence = 0;
            for (int h = 1; h <= 8; h++) {
                double c = 0;
                double s = 0;
                for (int i = 0; i < edges; i++) {
                    c += Math.cos(2 * Math.PI * h * (i * period % 1)) / edges;
                    s += Math.sin(2 * Math.PI * h * (i * period % 1)) / edges;
                }
                coherence = c * c + s * s;
                variance += coherence / (2 * Math.PI * Math.PI * h * h);
                rest -= 1 / (2 * Math.PI * Math.PI * h * h);
            }
            double expected = Math.sqrt(variance + rest * coherence);
            // instants of a million samples lose six of sixteen digits between two samples
            assertThat(phases.keptSeconds()).isCloseTo(expected, within(1e-8));
        }
    }
}
