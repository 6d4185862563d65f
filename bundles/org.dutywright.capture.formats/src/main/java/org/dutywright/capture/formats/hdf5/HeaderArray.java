// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import java.nio.ByteBuffer;
import org.dutywright.capture.formats.internal.ElementType;
import org.dutywright.capture.formats.internal.arrays.NumberArray;

/** A short dataset whose elements lie in its header. */
final class HeaderArray implements NumberArray {
    private final String path;
    private final ElementType type;
    private final Shape shape;
    private final ByteBuffer bytes;

    HeaderArray(String path, ElementType type, Shape shape, ByteBuffer bytes) {
        this.path = path;
        this.type = type;
        this.shape = shape;
        this.bytes = bytes.order(type.order());
    }

    @Override
    public String path() {
        return path;
    }

    @Override
    public Kind kind() {
        return PlainArray.kindOf(type);
    }

    @Override
    public long rows() {
        return shape.rows();
    }

    @Override
    public long heldRows() {
        long elements = bytes.limit() / type.bytes();
        return elements / shape.columns() >= shape.rows() ? shape.rows() : 0;
    }

    @Override
    public int columns() {
        return shape.columns();
    }

    @Override
    public void read(long firstRow, int count, double[][] target) {
        for (int column = 0; column < shape.columns(); column++) {
            for (int i = 0; i < count; i++) {
                target[column][i] = type.value(bytes, (int) shape.index(firstRow + i, column) * type.bytes());
            }
        }
    }
}
