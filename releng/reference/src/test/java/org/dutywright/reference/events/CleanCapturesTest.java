// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.events;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.dutywright.reference.Page;
import org.junit.jupiter.api.Test;

/** The small version of the study that the folder results holds. */
class CleanCapturesTest {
    @Test
    void healthy_sensors_have_no_event() throws IOException {
        Page page = new Page("small");

        new CleanCaptures().run(0.05, page);

        assertThat(page.text()).contains("cycles of healthy sensors, 0 false events");
    }
}
