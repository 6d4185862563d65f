// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;
import org.dutywright.workbench.capture.view.CycleFinder;
import org.junit.jupiter.api.Test;

final class CycleFinderTest {
    // 200 Hz with a pause after the third cycle
    private final CycleTable cycles =
            new Cycles(List.of(cycle(0, 1), cycle(1, 1.005), cycle(2, 1.01), cycle(3, 1.1), cycle(4, 1.105)));

    @Test
    void the_cycle_at_an_instant_is_found() throws IOException {
        assertThat(CycleFinder.at(cycles, 1.002).orElseThrow().index()).isZero();
        assertThat(CycleFinder.at(cycles, 1.012).orElseThrow().index()).isEqualTo(2);
        assertThat(CycleFinder.at(cycles, 1.109).orElseThrow().index()).isEqualTo(4);
    }

    @Test
    void an_edge_belongs_to_the_cycle_that_it_begins() throws IOException {
        assertThat(CycleFinder.at(cycles, 1.005).orElseThrow().index()).isEqualTo(1);
    }

    @Test
    void there_is_none_before_after_and_in_the_pause() throws IOException {
        assertThat(CycleFinder.at(cycles, 0.999)).isEmpty();
        assertThat(CycleFinder.at(cycles, 1.05)).isEmpty();
        assertThat(CycleFinder.at(cycles, 1.2)).isEmpty();
    }

    @Test
    void there_is_none_where_there_are_no_cycles() throws IOException {
        assertThat(CycleFinder.at(new Cycles(List.of()), 1)).isEmpty();
    }

    private static Cycle cycle(long index, double startSeconds) {
        return new Cycle(index, startSeconds, 0.005, 0.001, 1, false);
    }

    private record Cycles(List<Cycle> all) implements CycleTable {
        @Override
        public long size() {
            return all.size();
        }

        @Override
        public Cycle get(long index) {
            return all.get(Math.toIntExact(index));
        }

        @Override
        public Cursor cursor() {
            throw new UnsupportedOperationException("single cycles are asked for");
        }

        @Override
        public void close() {}
    }
}
