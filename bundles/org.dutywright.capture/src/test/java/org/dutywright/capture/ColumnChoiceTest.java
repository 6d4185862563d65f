// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class ColumnChoiceTest {
    @Test
    void aNumberIsAddedToNamesThatOccurredBefore() {
        assertThat(ColumnChoice.uniqueNames(List.of("a", "b", "a", "a"))).containsExactly("a", "b", "a_2", "a_3");
        assertThat(ColumnChoice.uniqueNames(List.of("a", "a", "a_2"))).containsExactly("a", "a_3", "a_2");
        assertThat(ColumnChoice.uniqueNames(List.of("a_2", "a_2", "a", "a")))
                .containsExactly("a_2", "a_2_2", "a", "a_3");
    }
}
