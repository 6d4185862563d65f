// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.events;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The small version of the study that the folder results holds. */
class InjectedFaultsTest {
    private static List<Tally> tallies;

    @BeforeAll
    static void measure() throws IOException {
        tallies = InjectedFaults.tallies(0.02);
    }

    @Test
    void every_fault_is_found_with_its_kind_at_its_place() {
        assertThat(tallies).hasSize(80).allSatisfy(tally -> {
            assertThat(tally.injected).as(tally.fault).isPositive();
            assertThat(tally.found).as("found of %s", tally.fault).isEqualTo(tally.injected);
        });
    }

    @Test
    void nothing_else_is_found() {
        assertThat(tallies)
                .allSatisfy(tally -> assertThat(tally.wrong).as(tally.fault).isEmpty());
    }
}
