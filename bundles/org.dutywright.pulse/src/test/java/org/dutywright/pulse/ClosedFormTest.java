// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ClosedFormTest {
    @Test
    void linear_ramps_give_exact_instants_and_eighty_percent_of_the_ramp() {
        // 100 us from 0 to 100 % has 80 us from 10 to 90 % (closed form); 1 MHz puts 100 samples on a ramp
        TestSignal signal =
                TestSignal.at(1e6, 0.5).ramp(100e-6).levels(0.1, 4.9).carrier(199.97, 1.23457e-3, 0.45);
        ChannelMeasurement channel = Measured.pwm(signal);

        assertThat(channel.status()).isEqualTo(Status.OK);
        assertThat(channel.eventCounts()).isEmpty();
        assertThat(channel.cycleCount()).isEqualTo(99);
        // interpolation on straight edges is exact but for rounding
        assertThat(Measured.statistic(channel, "frequency").mean()).isCloseTo(199.97, within(1e-8));
        assertThat(Measured.statistic(channel, "duty").mean()).isCloseTo(45, within(1e-8));
        assertThat(Measured.single(channel, "transition.rise").value()).isCloseTo(80e-6, within(1e-12));
        assertThat(Measured.single(channel, "transition.fall").value()).isCloseTo(80e-6, within(1e-12));
        assertThat(Measured.cycles(channel).get(0).startSeconds()).isCloseTo(1.23457e-3, within(1e-11));
        assertThat(channel.levels().orElseThrow().low().value()).isCloseTo(0.1, within(1e-12));
        assertThat(channel.levels().orElseThrow().high().value()).isCloseTo(4.9, within(1e-12));
        // 0.1 V + 45 % of 4.8 V (closed form); the corner samples of the ramps cost the trapezoids a little
        assertThat(Measured.single(channel, "mean-voltage").value()).isCloseTo(2.26, within(1e-6));
    }
}
