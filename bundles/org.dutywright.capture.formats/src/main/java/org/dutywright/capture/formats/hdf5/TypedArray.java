// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import org.dutywright.capture.formats.internal.ElementType;
import org.dutywright.capture.formats.internal.arrays.NumberArray;

/** What datasets have in common wherever their elements lie: a place, a type and a shape. */
abstract class TypedArray implements NumberArray {
    final String path;
    final ElementType type;
    final Shape shape;

    TypedArray(String path, ElementType type, Shape shape) {
        this.path = path;
        this.type = type;
        this.shape = shape;
    }

    @Override
    public final String path() {
        return path;
    }

    @Override
    public final Kind kind() {
        if (type.isFloat()) {
            return type.bytes() == Double.BYTES ? Kind.DOUBLE : Kind.FLOAT;
        }
        return type.isCount() ? Kind.COUNT : Kind.WHOLE;
    }

    @Override
    public final long rows() {
        return shape.rows();
    }

    @Override
    public final int columns() {
        return shape.columns();
    }
}
