// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ColumnChoiceTest {
    @Test
    void aNumberIsAddedToNamesThatOccurredBefore() {
        assertThat(ColumnChoice.uniqueNames(List.of("a", "b", "a", "a"))).containsExactly("a", "b", "a_2", "a_3");
        assertThat(ColumnChoice.uniqueNames(List.of("a", "a", "a_2"))).containsExactly("a", "a_3", "a_2");
        assertThat(ColumnChoice.uniqueNames(List.of("a_2", "a_2", "a", "a")))
                .containsExactly("a_2", "a_2_2", "a", "a_3");
    }

    @Test
    void aScaleMakesVoltsOfAColumnWithoutAUnitAndLeavesOtherUnits() throws UnreadableException {
        List<ColumnChoice.Column> columns =
                List.of(new ColumnChoice.Column("", "sound", "", 0.5), new ColumnChoice.Column("", "coil", "A", 1));
        ReadSettings settings = new ReadSettings(OptionalDouble.empty(), List.of(), Map.of("sound", 4.0, "coil", 10.0));
        assertThat(ColumnChoice.choose(Path.of("x.wav"), columns, settings))
                .containsExactly(
                        new ColumnChoice.Chosen(0, new Channel("sound", "V"), 2),
                        new ColumnChoice.Chosen(1, new Channel("coil", "A"), 10));
    }
}
