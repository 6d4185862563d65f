// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.write;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.dutywright.simulation.Recording;
import org.junit.jupiter.api.Test;

class NumbersTest {

    private static String print(long scaled, int decimals) {
        byte[] bytes = new byte[FixedPoint.MAX_BYTES];
        return new String(bytes, 0, FixedPoint.print(scaled, decimals, bytes, 0), StandardCharsets.US_ASCII);
    }

    private static Recording recording(double rate, double start, String unit) {
        return new Recording(
                rate,
                start,
                10,
                Optional.empty(),
                List.of(),
                new Recording.Format(true, unit, "V", OptionalInt.empty()));
    }

    private static String stamp(TimeStamps stamps, long instant) {
        return print(stamps.scaled(instant), stamps.decimals());
    }

    @Test
    void numbersArePrintedAsDecimalsDo() {
        assertThat(print(0, 3)).isEqualTo("0.000");
        assertThat(print(-5, 3)).isEqualTo("-0.005");
        assertThat(print(12345, 0)).isEqualTo("12345");
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < 10_000; i++) {
            long scaled = random.nextLong() >> random.nextInt(64);
            int decimals = random.nextInt(13);
            // Oracle: java.math
            assertThat(print(scaled, decimals))
                    .isEqualTo(BigDecimal.valueOf(scaled, decimals).toPlainString());
        }
    }

    @Test
    void stampsOfADecimalStepAreExact() {
        TimeStamps stamps = TimeStamps.of(recording(100_000, -1.5, "s"));
        assertThat(stamp(stamps, 0)).isEqualTo("-1.50000");
        assertThat(stamp(stamps, 150_001)).isEqualTo("0.00001");
        // An hour later and beyond what a double keeps of 10 µs steps added up.
        assertThat(stamp(stamps, 360_150_001L)).isEqualTo("3600.00001");
    }

    @Test
    void stampsMayBeInMillisecondsOrMicroseconds() {
        assertThat(stamp(TimeStamps.of(recording(100_000, 0, "ms")), 7)).isEqualTo("0.07");
        assertThat(stamp(TimeStamps.of(recording(100_000, 0.5, "us")), 7)).isEqualTo("500070");
    }

    @Test
    void stampsOfAnotherStepAreRoundedToAThousandthOfIt() {
        TimeStamps stamps = TimeStamps.of(recording(44_100, 0, "s"));
        // 1 / 44100 = 22.6757370 µs
        assertThat(stamp(stamps, 1)).isEqualTo("0.00002268");
        assertThat(stamp(stamps, 44_100)).isEqualTo("1.00000000");
    }
}
