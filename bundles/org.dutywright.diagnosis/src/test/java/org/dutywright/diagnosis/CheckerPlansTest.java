// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.ChannelPlan.Travel;
import org.dutywright.pulse.InputThresholds;
import org.dutywright.pulse.Role;
import org.junit.jupiter.api.Test;

class CheckerPlansTest {
    @Test
    void channelsMatchByNameWhateverTheirOrder() {
        ChannelMatch match = Checker.match(Sensors.twin(), capture("supply", "signal2", "signal1"), Map.of());
        assertThat(match.byName()).isTrue();
        assertThat(match.captureNames()).containsExactly(entry("signal1", "signal1"), entry("signal2", "signal2"));
    }

    @Test
    void otherwiseChannelsMatchByOrderAmongThoseThatMayCarryPulses() {
        Map<String, ChannelPlan> user = Map.of("position", role(Role.LEVEL));
        ChannelMatch match = Checker.match(Sensors.twin(), capture("ubat", "position", "A", "B"), user);
        assertThat(match.byName()).isFalse();
        assertThat(match.captureNames()).containsExactly(entry("signal1", "A"), entry("signal2", "B"));
    }

    @Test
    void aNameThatIsNotThereFindsNoOtherChannel() {
        ChannelMatch match = Checker.match(Sensors.twin(), capture("signal1", "B"), Map.of());
        assertThat(match.captureNames()).containsExactly(entry("signal1", "signal1"));
    }

    @Test
    void aSensorChannelNamedLikeASupplyIsStillFoundByName() {
        ChannelMatch match = ChannelMatch.of(Sensors.twin(), List.of("signal1"));
        assertThat(match.captureNames()).containsOnlyKeys("signal1");
    }

    @Test
    void plansCarryWhatTheSensorTextKnows() {
        ChannelMatch match = ChannelMatch.of(Sensors.twin(), List.of("A", "B"));
        Map<String, ChannelPlan> plans = Checker.plans(Sensors.twin(), match, Map.of());
        assertThat(plans)
                .containsOnly(
                        entry(
                                "A",
                                new ChannelPlan(
                                        Optional.of(Role.PWM),
                                        Optional.of(ActiveLevel.HIGH),
                                        Optional.of(new Travel(10, 45)),
                                        OptionalDouble.of(100e-6),
                                        Sensors.twin()
                                                .channels()
                                                .get(0)
                                                .input()
                                                .map(it -> new InputThresholds(it.risingVolts(), it.fallingVolts())))),
                        entry(
                                "B",
                                new ChannelPlan(
                                        Optional.of(Role.PWM),
                                        Optional.of(ActiveLevel.LOW),
                                        Optional.of(new Travel(20, 90)),
                                        OptionalDouble.of(100e-6))));
    }

    @Test
    void whatTheUserSaysGoesBeforeTheSensorText() {
        ChannelMatch match = ChannelMatch.of(Sensors.twin(), List.of("signal1", "signal2"));
        ChannelPlan user = new ChannelPlan(
                Optional.empty(), Optional.of(ActiveLevel.LOW), Optional.empty(), OptionalDouble.empty());
        Map<String, ChannelPlan> plans =
                Checker.plans(Sensors.twin(), match, Map.of("signal1", user, "supply", role(Role.SUPPLY)));
        assertThat(plans.get("signal1").active()).contains(ActiveLevel.LOW);
        assertThat(plans.get("signal1").role()).contains(Role.PWM);
        assertThat(plans.get("supply")).isEqualTo(role(Role.SUPPLY));
    }

    private static ChannelPlan role(Role role) {
        return new ChannelPlan(Optional.of(role), Optional.empty(), Optional.empty(), OptionalDouble.empty());
    }

    private static Capture capture(String... names) {
        double[][] values = new double[names.length][10];
        return Captures.ofArrays(List.of(names), Collections.nCopies(names.length, "V"), 0, 1000, values);
    }
}
