// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class UnreadableExceptionTest {
    // found by ten minutes of spoiled stores, whose messages quoted a broken number with the line break in it
    @Test
    void aMessageIsOneLineWhateverItQuotes() {
        UnreadableException e = new UnreadableException(
                Path.of("pedal.arrow"), "byte 7", "the step is '1/10\r\n0\u0000'", "convert again");
        assertThat(e).hasMessage("pedal.arrow, byte 7: the step is '1/10 0 '; convert again");
    }
}
