// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Studies are found by their names, and their pages can be read. */
class RepeatTest {
    @Test
    void every_study_has_a_name_of_its_own() {
        assertThat(Repeat.STUDIES)
                .extracting(Study::name)
                .doesNotHaveDuplicates()
                .allMatch(it -> it.matches("[a-z-]+"));
    }

    @Test
    void the_columns_of_a_table_are_aligned() {
        Page page = new Page("Title").paragraph("Words.").table(new Page.Table("a", "long heading").row("value", 1));

        assertThat(page.text()).isEqualTo("""
                # Title

                Words.

                | a     | long heading |
                |-------|--------------|
                | value | 1            |
                """);
    }
}
