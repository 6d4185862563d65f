// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;
import org.junit.jupiter.api.Test;

/** Cycles as rows of a table. */
final class CycleRowsTest {
    private static final double PERIOD_SECONDS = 0.005;

    @Test
    void a_row_has_its_cell_texts_with_units() {
        CycleRows rows = CycleRows.of("signal1", "V", cycles(1_000_000));

        assertThat(rows.count()).isEqualTo(1_000_000);
        assertThat(rows.text(CycleColumn.INDEX, 999_999)).isEqualTo("999,999");
        assertThat(rows.text(CycleColumn.START, 200)).isEqualTo("1.000000 s");
        assertThat(rows.text(CycleColumn.PERIOD, 200)).isEqualTo("5.00000 ms");
        assertThat(rows.text(CycleColumn.FREQUENCY, 200)).isEqualTo("200.000 Hz");
        assertThat(rows.text(CycleColumn.PULSE_DURATION, 200)).isEqualTo("1.25000 ms");
        assertThat(rows.text(CycleColumn.DUTY, 200)).isEqualTo("25.0000 %");
        assertThat(rows.text(CycleColumn.MEAN, 200)).isEqualTo("3.00000 V");
        assertThat(rows.text(CycleColumn.DISTURBED, 200)).isEmpty();
        assertThat(rows.text(CycleColumn.DISTURBED, 7)).isEqualTo(Messages.disturbed);
    }

    @Test
    void outside_of_the_rows_there_is_nothing() {
        CycleRows rows = CycleRows.of("signal1", "V", cycles(10));

        assertThat(rows.cycle(-1)).isEmpty();
        assertThat(rows.cycle(10)).isEmpty();
        assertThat(CycleRows.none().count()).isZero();
        assertThat(CycleRows.none().text(CycleColumn.DUTY, 0)).isEmpty();
    }

    @Test
    void an_instant_leads_to_the_cycle_that_it_falls_into() {
        CycleRows rows = CycleRows.of("signal1", "V", cycles(1000));

        assertThat(rows.at(-1)).hasValue(0);
        assertThat(rows.at(1.002)).hasValue(200);
        assertThat(rows.at(4.9999)).hasValue(999);
        assertThat(rows.at(5.1)).isEmpty();
    }

    @Test
    void a_table_that_is_closed_meanwhile_leaves_cells_empty() {
        CycleRows rows = CycleRows.of("signal1", "V", new Made(10) {
            @Override
            public Cycle get(long index) throws IOException {
                throw new IOException("closed");
            }
        });

        assertThat(rows.text(CycleColumn.DUTY, 3)).isEmpty();
        assertThat(rows.at(0.01)).isEmpty();
    }

    private static CycleTable cycles(long count) {
        return new Made(count);
    }

    /** 200 Hz with a duty of 25 % and a mean of 3 V; the cycle 7 is disturbed. */
    private static class Made implements CycleTable {
        private final long count;

        Made(long count) {
            this.count = count;
        }

        @Override
        public long size() {
            return count;
        }

        @Override
        public Cycle get(long index) throws IOException {
            return new Cycle(index, index * PERIOD_SECONDS, PERIOD_SECONDS, PERIOD_SECONDS / 4, 3, index == 7);
        }

        @Override
        public Cursor cursor() {
            long[] next = {0};
            return () -> next[0] == count ? null : get(next[0]++);
        }

        @Override
        public void close() {}
    }
}
