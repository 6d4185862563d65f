// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.CaptureMeasurement;
import org.junit.jupiter.api.Test;

class CheckerRunTest {
    @Test
    void cancellingIsThrownUnwrapped() {
        CaptureMeasurement measurement = measurement();
        ChannelMatch match = Checker.match(Sensors.twin(), measurement.capture(), Map.of());
        assertThatThrownBy(
                        () -> Checker.check(measurement, Sensors.twin(), match, CheckSettings.none(), new Cancelled()))
                .isExactlyInstanceOf(CancelledException.class);
    }

    @Test
    void theSameMeasurementGivesTheSameResultTwice() throws IOException {
        CaptureMeasurement measurement = measurement();
        ChannelMatch match = Checker.match(Sensors.twin(), measurement.capture(), Map.of());
        CheckResult first = Checker.check(measurement, Sensors.twin(), match, CheckSettings.none(), Progress.NONE);
        CheckResult second = Checker.check(measurement, Sensors.twin(), match, CheckSettings.none(), Progress.NONE);
        assertThat(second.lines()).isEqualTo(first.lines());
        assertThat(second.suspects()).isEqualTo(first.suspects());
        assertThat(second.agreement()).isEqualTo(first.agreement());
    }

    @Test
    void whatTheSensorTextLeavesOpenIsListed() throws IOException {
        CheckResult result = Checks.check(
                Sensors.of(Sensors.signal1(), Sensors.bare("signal2")), CheckSettings.none(), measurement());
        assertThat(result.absentLimits())
                .containsExactly(
                        "signal2: no limit for the frequency",
                        "signal2: no limit for the low level",
                        "signal2: no limit for the high level",
                        "signal2: no limit for transitions",
                        "signal2: no duty at the ends of travel");
        assertThat(result.agreementAbsent()).contains("signal2 has no duty at the ends of travel in the sensor text");
    }

    private static CaptureMeasurement measurement() {
        return Checks.measurement(
                List.of(),
                MeasuredChannel.named("signal1").carrier(200, 0, 2, t -> 30).build(),
                MeasuredChannel.named("signal2").carrier(203, 0.001, 2, t -> 30).build());
    }

    private static final class Cancelled implements Progress {
        @Override
        public void begin(String task, long totalWork) {}

        @Override
        public void worked(long work) {}

        @Override
        public boolean isCancelled() {
            return true;
        }
    }
}
