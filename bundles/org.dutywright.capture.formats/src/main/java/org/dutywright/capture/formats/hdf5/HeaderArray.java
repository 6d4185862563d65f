// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import java.nio.ByteBuffer;
import org.dutywright.capture.formats.internal.ElementType;

/** A short dataset whose elements lie in its header. */
final class HeaderArray extends TypedArray {
    private final ByteBuffer bytes;

    HeaderArray(String path, ElementType type, Shape shape, ByteBuffer bytes) {
        super(path, type, shape);
        this.bytes = bytes.order(type.order());
    }

    @Override
    public long heldRows() {
        long elements = bytes.limit() / type.bytes();
        return elements / shape.columns() >= shape.rows() ? shape.rows() : 0;
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
