// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.dutywright.pulse.EventKind;
import org.dutywright.sensor.SensorText;
import org.junit.jupiter.api.Test;

class EventKindsTest {
    @Test
    void aSensorTextMayNameEveryKindThatIsMeasuredAndNoOther() {
        assertThat(SensorText.EVENT_KINDS)
                .containsExactlyInAnyOrderElementsOf(
                        Arrays.stream(EventKind.values()).map(EventKind::word).toList());
    }
}
