// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.nio.charset.StandardCharsets;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;

/**
 * Random streams that depend on nothing but the scenario's seed and what they are for: a fault added to one channel
 * changes neither the noise of another nor its own jitter.
 */
final class Randomness {

    /** Named, so that no later Java release may pick another one. */
    private static final RandomGeneratorFactory<RandomGenerator> FACTORY =
            RandomGeneratorFactory.of("L64X128MixRandom");

    private Randomness() {}

    /**
     * One stream.
     *
     * @param seed of the scenario
     * @param channel whose it is
     * @param purpose what it is for
     * @param block which part of it
     */
    static RandomGenerator of(long seed, String channel, String purpose, long block) {
        // FNV-1a, 64 bit, over seed, names and block; the generator mixes its seed itself.
        long hash = 0xcbf29ce484222325L;
        hash = mix(hash, seed);
        for (byte b : (channel + "/" + purpose).getBytes(StandardCharsets.UTF_8)) {
            hash = (hash ^ (b & 0xff)) * 0x100000001b3L;
        }
        return FACTORY.create(mix(hash, block));
    }

    private static long mix(long hash, long value) {
        long mixed = hash;
        for (int shift = 0; shift < 64; shift += 8) {
            mixed = (mixed ^ (value >>> shift & 0xff)) * 0x100000001b3L;
        }
        return mixed;
    }
}
