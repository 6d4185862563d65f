// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.util.Iterator;
import java.util.List;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;

/** Cycles from a list. */
public record ListCycles(List<Cycle> cycles) implements CycleTable {
    @Override
    public long size() {
        return cycles.size();
    }

    @Override
    public Cycle get(long index) {
        return cycles.get(Math.toIntExact(index));
    }

    @Override
    public Cursor cursor() {
        Iterator<Cycle> iterator = cycles.iterator();
        return () -> iterator.hasNext() ? iterator.next() : null;
    }

    @Override
    public void close() {}
}
