// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.dutywright.capture.Progress;
import org.dutywright.capture.Samples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReproducibilityTest {

    @TempDir
    Path folder;

    private static Scenario noisy(long seed, Fault... faults) {
        Recording recording = new Recording(
                Scenes.RATE_HZ,
                -0.1,
                1,
                Optional.of(Quantisation.ofBits(12, -1, 19)),
                List.of(new Recording.Pause(0.3, 0.35)),
                Recording.Format.standard());
        return Scenes.scenario(
                seed,
                recording,
                new Profile(List.of(new Profile.Point(0, 0), new Profile.Point(0.5, 100))),
                List.of(
                        Scenes.withNoise(Scenes.channel("signal1", true, 25), 3e-6, 0.05),
                        Scenes.withNoise(Scenes.channel("signal2", false, 60), 3e-6, 0.05)),
                faults);
    }

    @Test
    void equalScenariosGiveEqualBytes() throws IOException {
        Path one = folder.resolve("one.csv");
        Path two = folder.resolve("two.csv");
        Simulator.write(noisy(7, new Fault.Bounce("signal1", 0.2, 2, 20e-6, true)), one, Progress.NONE);
        Simulator.write(noisy(7, new Fault.Bounce("signal1", 0.2, 2, 20e-6, true)), two, Progress.NONE);
        assertThat(two).hasSameBinaryContentAs(one);
        assertThat(Simulator.truthFile(two)).hasSameBinaryContentAs(Simulator.truthFile(one));
    }

    @Test
    void anotherSeedGivesOtherBytes() throws IOException {
        Path one = folder.resolve("one.csv");
        Path two = folder.resolve("two.csv");
        Simulator.write(noisy(7), one, Progress.NONE);
        Simulator.write(noisy(8), two, Progress.NONE);
        assertThat(Files.mismatch(one, two)).isNotEqualTo(-1);
    }

    @Test
    void aFaultOfOneChannelChangesNothingElsewhere() {
        Fault fault = new Fault.MissingPulse("signal1", 0.2, 2);
        double[] healthy = Scenes.samples(noisy(7), 0);
        double[] faulty = Scenes.samples(noisy(7, fault), 0);
        assertThat(Scenes.samples(noisy(7, fault), 1)).containsExactly(Scenes.samples(noisy(7), 1));
        int differing = 0;
        for (int i = 0; i < healthy.length; i++) {
            differing += healthy[i] == faulty[i] ? 0 : 1;
        }
        // Two pulses of 25 % of 5 ms at 100 kHz, each with the second half of its edges.
        assertThat(differing).isBetween(240, 270);
    }

    @Test
    void aSampleDoesNotDependOnHowItIsReached() throws IOException {
        Scenario scenario = noisy(
                7,
                new Fault.Runt("signal1", 0.1, 3, 50),
                new Fault.SupplyLoss("signal1", 0.5, 0.52, 0.03, 12.4, java.util.OptionalDouble.empty(), true),
                new Fault.NoiseBurst("signal1", 0.6, 0.7, 0.2));
        double[] whole = Scenes.samples(scenario, 0);
        RandomGenerator random = new SplittableRandom(42);
        try (Samples samples = Simulator.samples(scenario)) {
            double[] part = new double[5000];
            for (int i = 0; i < 200; i++) {
                int count = random.nextInt(1, part.length);
                int first = random.nextInt(whole.length - count);
                samples.read(0, first, part, 0, count);
                for (int k = 0; k < count; k++) {
                    assertThat(part[k]).isEqualTo(whole[first + k]);
                }
            }
        }
    }
}
