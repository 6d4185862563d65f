// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;

/** What {@link ShapePass} found on each pulse of a {@link PulseLog}, in the same order, in constant memory. */
final class ShapeLog extends SpillLog<Shape> {
    private static final int RECORD = 10;

    ShapeLog() {
        super(RECORD);
    }

    void add(Shape shape) throws IOException {
        put(
                shape.squares,
                shape.head.beyond(),
                shape.head.samples(),
                shape.head.bend(),
                shape.tail.beyond(),
                shape.tail.samples(),
                shape.tail.bend(),
                shape.inputSeconds,
                shape.inputSecondsPerUnit,
                shape.inputBendSeconds);
    }

    @Override
    Shape of(double[] record) {
        return of(record, null);
    }

    @Override
    Shape of(double[] record, Shape spare) {
        Shape shape = spare == null ? new Shape() : spare;
        shape.squares = record[0];
        shape.head.set(record[1], (int) record[2], record[3]);
        shape.tail.set(record[4], (int) record[5], record[6]);
        shape.inputSeconds = record[7];
        shape.inputSecondsPerUnit = record[8];
        shape.inputBendSeconds = record[9];
        return shape;
    }
}
