// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.Optional;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Role;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.SensorChannel;
import org.junit.jupiter.api.Test;

class CheckerSupplyTest {
    private static final String CANNOT_TELL = "% of supply needs a supply channel or --supply VOLTS";

    @Test
    void aShareOfTheSupplyNeedsASupply() throws IOException {
        Line line = line(Sensors.of(shareOfSupply()), "signal1.highLevel", signal1());
        assertThat(line.result()).isEqualTo(LineResult.NOT_JUDGED);
        assertThat(line.reason()).isEqualTo(CANNOT_TELL);
        assertThat(line.lower()).isEmpty();
        assertThat(line.upper()).hasValue(16);
        assertThat(line.measured()).hasValue(12);
    }

    @Test
    void theOtherLimitStillFailsWithoutASupply() throws IOException {
        Line line =
                line(Sensors.of(shareOfSupply()), "signal1.highLevel", signal1().levels(0.4, 17));
        assertThat(line.result()).isEqualTo(LineResult.FAIL);
    }

    @Test
    void aShareOfTheSupplyIsTakenFromTheTypedVoltage() throws IOException {
        CheckResult result = Checks.check(
                Sensors.of(shareOfSupply()), Checks.supply(16.1), signal1().build());
        Line line = Checks.lines(result).get("signal1.highLevel");
        // 75 % of 16.1 V.
        assertThat(line.lower().orElseThrow()).isCloseTo(12.075, within(1e-12));
        assertThat(line.result()).isEqualTo(LineResult.FAIL);
        assertThat(line.reason()).contains("supply taken as 16.10 V as given by the user");
    }

    @Test
    void theRoleOfSupplyGoesBeforeANameAndBothBeforeTheTypedVoltage() throws IOException {
        ChannelMeasurement named = MeasuredChannel.level("battery", Role.LEVEL, 20, 0.01);
        ChannelMeasurement role = MeasuredChannel.level("ch3", Role.SUPPLY, 14, 0.01);

        assertThat(supplyLine(named, role).measured()).hasValue(14);
        assertThat(supplyLine(named).measured()).hasValue(20);
        assertThat(supplyLine(MeasuredChannel.level("Battery voltage", Role.LEVEL, 20, 0.01))
                        .measured())
                .hasValue(24);
    }

    @Test
    void theUncertaintyOfTheSupplyEntersALimitThatRestsOnIt() throws IOException {
        ChannelMeasurement supply = MeasuredChannel.level("supply", Role.SUPPLY, 12, 0.4);
        CheckResult result = Checks.check(
                Sensors.of(shareOfSupply()),
                CheckSettings.none(),
                signal1().levelU(0.4).build(),
                supply);
        // sqrt(0.4^2 + (0.75 x 0.4)^2), closed form.
        assertThat(Checks.lines(result).get("signal1.highLevel").u().orElseThrow())
                .isCloseTo(0.5, within(1e-12));
    }

    @Test
    void aSupplyOutsideItsLimitsFails() throws IOException {
        CheckResult result = Checks.check(
                Sensors.twin(), Checks.supply(8.5), signal1().build(), signal2().build());
        assertThat(Checks.lines(result).get("supply").result()).isEqualTo(LineResult.FAIL);
        assertThat(result.verdict()).isEqualTo(Verdict.DOES_NOT_CONFORM);
    }

    private static MeasuredChannel signal1() {
        return MeasuredChannel.named("signal1");
    }

    private static MeasuredChannel signal2() {
        return MeasuredChannel.named("signal2").carrier(203, 0.001, 2, t -> 20);
    }

    private static SensorChannel shareOfSupply() {
        SensorChannel base = Sensors.signal1();
        return new SensorChannel(
                base.name(),
                true,
                base.frequency(),
                base.lowLevel(),
                Optional.of(Sensors.supplyShare(75, 16)),
                base.input(),
                base.duty(),
                base.transitionMaxSeconds());
    }

    private static Line line(Sensor sensor, String item, MeasuredChannel channel) throws IOException {
        return Checks.lines(Checks.check(sensor, CheckSettings.none(), channel.build()))
                .get(item);
    }

    private static Line supplyLine(ChannelMeasurement... more) throws IOException {
        ChannelMeasurement[] channels = new ChannelMeasurement[more.length + 1];
        channels[0] = signal1().build();
        System.arraycopy(more, 0, channels, 1, more.length);
        return Checks.lines(Checks.check(Sensors.of(Sensors.signal1()), Checks.supply(24), channels))
                .get("supply");
    }
}
