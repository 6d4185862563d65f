// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.events;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

    /** Cases of larger studies in which noise, a short pulse or a silent channel beside it once hid the fault or feigned another. */
    @ParameterizedTest
    @CsvSource({
        "275603, level shift, 0.03",
        "277607, level shift, 0.05",
        "829135, level shift, 0.05",
        "831933, level shift, 0.05",
        "259482, slow edge, 0.05",
        "259720, slow edge, 0.05",
        "20254520, slow edge, 0.03",
        "20259120, slow edge, 0.05",
        "40254280, slow edge, 0.03",
        "76480, dropout of 8 pulses, 0.05",
        "89400, 'dropout, wire open', 0.02",
        "20084560, 'dropout, wire open', 0.01",
        "319600, stuck high, 0.05",
        "20108080, 'runt, low pulse', 0.02",
    })
    void a_fault_that_once_was_missed_is_found(long number, String fault, double noiseShare) throws IOException {
        Tally tally = InjectedFaults.drawn(number, fault, noiseShare);

        assertThat(tally.injected).isPositive();
        assertThat(tally.wrong).isEmpty();
    }

    @Test
    void nothing_else_is_found() {
        assertThat(tallies)
                .allSatisfy(tally -> assertThat(tally.wrong).as(tally.fault).isEmpty());
    }
}
