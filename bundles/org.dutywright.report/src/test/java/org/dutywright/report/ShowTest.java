// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.dutywright.report.internal.Show;
import org.junit.jupiter.api.Test;

final class ShowTest {
    @Test
    void limitsHaveNoZerosAtTheirEnds() {
        OptionalDouble none = OptionalDouble.empty();
        assertThat(Show.limits(OptionalDouble.of(180), OptionalDouble.of(220), "Hz"))
                .isEqualTo("180 Hz to 220 Hz");
        assertThat(Show.limits(none, OptionalDouble.of(1e-4), "s")).isEqualTo("at most 100 µs");
        assertThat(Show.limits(OptionalDouble.of(9.5), none, "V")).isEqualTo("at least 9.5 V");
        assertThat(Show.limits(none, OptionalDouble.of(0), "")).isEqualTo("at most 0");
        assertThat(Show.limits(none, none, "V")).isEmpty();
    }

    @Test
    void aCountIsAWholeNumberWithItsNoun() {
        assertThat(Show.exact(2500, "")).isEqualTo("2500");
        assertThat(Show.exact(1_234_567, "")).isEqualTo("1234567");
        assertThat(Show.count(1, "cycle")).isEqualTo("1 cycle");
        assertThat(Show.count(12_345, "cycle")).isEqualTo("12,345 cycles");
    }

    @Test
    void instantsAreSecondsToTheMicrosecond() {
        assertThat(Show.instant(-0.05)).isEqualTo("-0.050000 s");
    }
}
