// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.function.LongPredicate;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every reader against spoiled files. With {@code -Ddutywright.hostile.seconds=600} each reader gets other files for so
 * long; a failure names its seed.
 */
class HostileInputTest {
    private static final long SEED = 20261125;
    private static final long TRIALS = 400;

    @TempDir
    Path folder;

    // a guard against loops without end, not a measure of speed
    @Timeout(value = 1, unit = TimeUnit.HOURS)
    @ParameterizedTest
    @ValueSource(strings = {"csv", "wav", "comtrade", "vcd", "numpy", "hdf5", "mat", "arrow"})
    void spoiledFilesAreReadSoundlyOrRefusedInOneLine(String reader) throws IOException {
        HostileRun run = new HostileRun(folder, reader);
        run.run(seed(), goOn());
        assertThat(run.read()).as("read").isPositive();
        assertThat(run.refused()).as("refused").isPositive();
    }

    private static long seconds() {
        return Long.getLong("dutywright.hostile.seconds", 0);
    }

    private static long seed() {
        return seconds() > 0 ? System.nanoTime() : SEED;
    }

    private static LongPredicate goOn() {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds());
        return seconds() > 0 ? trial -> System.nanoTime() < end : trial -> trial < TRIALS;
    }
}
