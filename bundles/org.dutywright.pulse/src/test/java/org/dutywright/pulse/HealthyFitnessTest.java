// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.stream.LongStream;
import org.dutywright.pulse.Fitness.Grade;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Recordings with nothing wrong about how they were made: every line of fitness must say so. Settings are drawn: 20 kS/s to
 * 1 MS/s, noise up to 5 % RMS of the swing, 8 to 16 bits, duty 3 to 97 %, edges from instant to slow, steady or moved.
 */
class HealthyFitnessTest {
    private static final int MOST_SAMPLES = 150_000;

    static LongStream seeds() {
        return LongStream.range(0, 300);
    }

    private record Settings(
            double rate,
            double carrier,
            double duty,
            double stroke,
            double noise,
            double step,
            double ramp,
            double low,
            double high) {}

    private static Settings draw(Random random) {
        double rate = 20e3 * Math.pow(50, random.nextDouble());
        double carrier =
                random.nextInt(4) == 0 ? 500 * (1 + 0.1 * random.nextGaussian()) : 180 + 40 * random.nextDouble();
        double period = rate / carrier;
        // the shortest pulse of a good recording has more than five samples, also where it falls badly between them
        double least = Math.max(0.03, 7 / period);
        double duty = least + (1 - 2 * least) * random.nextDouble();
        double stroke = random.nextBoolean() ? 0 : (1 - least - duty) * random.nextDouble();
        double low = 0.5 * random.nextDouble();
        double high = 4.5 + 10 * random.nextDouble();
        double noise = random.nextInt(4) == 0 ? 0 : 0.05 * random.nextDouble() * (high - low);
        double step = random.nextInt(5) == 0 ? 0 : 16 / Math.pow(2, 8 + random.nextInt(9));
        double shortest = Math.min(duty, 1 - duty - stroke) / carrier;
        double ramp = random.nextInt(3) == 0 ? 0 : 0.4 * shortest * random.nextDouble();
        return new Settings(rate, carrier, duty, stroke, noise, step, ramp, low, high);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void everyLineOfAHealthyRecordingIsGood(long seed) {
        Settings drawn = draw(new Random(seed));
        double seconds = Math.min(MOST_SAMPLES / drawn.rate(), 1.5);
        TestSignal signal = TestSignal.at(drawn.rate(), seconds)
                .levels(drawn.low(), drawn.high())
                .ramp(drawn.ramp())
                .noise(drawn.noise(), seed)
                .quantised(drawn.step())
                .carrier(
                        drawn.carrier(),
                        1e-3,
                        // rests at either end for a third of the time and moves between them
                        t -> drawn.duty() + drawn.stroke() * Math.clamp(1.5 - 3 * Math.abs(t / seconds - 0.5), 0, 1));
        CaptureMeasurement measured = Measured.of(Measured.capture(signal), Measured.plan(Role.PWM));
        assertThat(measured.channels().get(0).status())
                .as("%s: %s", drawn, measured.channels().get(0).statusReason())
                .isEqualTo(Status.OK);
        assertThat(measured.fitness())
                .as("%s", drawn)
                .hasSizeGreaterThan(8)
                .allSatisfy(line -> assertThat(line.grade()).as("%s", line).isEqualTo(Grade.GOOD));
    }
}
