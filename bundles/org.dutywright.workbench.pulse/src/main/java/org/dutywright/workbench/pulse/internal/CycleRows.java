// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.io.IOException;
import java.util.Optional;
import java.util.OptionalLong;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;

/**
 * The cycles of one channel as rows of a table. Rows are read when they are shown; the table of cycles keeps the page
 * that was read last, and this keeps the row, for its cells are asked for one after the other.
 */
final class CycleRows {
    private final String channel;
    private final String unit;
    private final Optional<CycleTable> cycles;
    private Optional<Cycle> last = Optional.empty();

    private CycleRows(String channel, String unit, Optional<CycleTable> cycles) {
        this.channel = channel;
        this.unit = unit;
        this.cycles = cycles;
    }

    static CycleRows none() {
        return new CycleRows("", "", Optional.empty());
    }

    static CycleRows of(String channel, String unit, CycleTable cycles) {
        return new CycleRows(channel, unit, Optional.of(cycles));
    }

    String channel() {
        return channel;
    }

    /** Number of rows, at most as many as a table can have. */
    int count() {
        return (int) Math.min(Integer.MAX_VALUE, cycles.map(CycleTable::size).orElse(0L));
    }

    /** The cycle of a row; empty where it cannot be read, as after a newer measuring has taken its place. */
    Optional<Cycle> cycle(long row) {
        if (last.isPresent() && last.get().index() == row) {
            return last;
        }
        if (row < 0 || row >= count()) {
            return Optional.empty();
        }
        try {
            last = Optional.of(cycles.orElseThrow().get(row));
            return last;
        } catch (IOException | IndexOutOfBoundsException e) {
            return Optional.empty();
        }
    }

    /** The text of a cell, empty where there is none. */
    String text(CycleColumn column, long row) {
        return cycle(row).map(cycle -> column.text(cycle, unit)).orElse("");
    }

    /** The row of the cycle that an instant falls into, else of the next one; empty after the last. */
    OptionalLong at(double seconds) {
        long from = 0;
        long to = count();
        while (from < to) {
            long middle = (from + to) >>> 1;
            Optional<Cycle> cycle = cycle(middle);
            if (cycle.isEmpty()) {
                return OptionalLong.empty();
            }
            if (cycle.get().endSeconds() > seconds) {
                to = middle;
            } else {
                from = middle + 1;
            }
        }
        return from < count() ? OptionalLong.of(from) : OptionalLong.empty();
    }
}
