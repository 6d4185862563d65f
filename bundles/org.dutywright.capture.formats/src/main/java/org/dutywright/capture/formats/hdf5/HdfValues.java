// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import io.jhdf.dataset.DatasetReader;
import io.jhdf.object.datatype.CompoundDataType;
import io.jhdf.object.datatype.DataType;
import io.jhdf.object.datatype.EnumDataType;
import io.jhdf.object.datatype.FixedPoint;
import io.jhdf.object.datatype.FloatingPoint;
import io.jhdf.object.datatype.Reference;
import io.jhdf.object.datatype.StringData;
import io.jhdf.object.datatype.VariableLength;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.dutywright.capture.formats.internal.ElementType;
import org.dutywright.capture.formats.internal.arrays.Facts;

/** What the elements of a dataset or an attribute are. */
final class HdfValues {
    private static final Set<String> PARTS_OF_COMPLEX = Set.of("r", "i", "real", "imag", "re", "im");

    private HdfValues() {}

    /** The type of plain numbers; empty for any other. */
    static Optional<ElementType> number(DataType type) {
        if (type instanceof EnumDataType choice) {
            return choice.getBaseType() instanceof FixedPoint ? number(choice.getBaseType()) : Optional.empty();
        }
        if (type instanceof FixedPoint fixed) {
            boolean whole = fixed.getBitOffset() == 0 && fixed.getBitPrecision() == 8 * fixed.getSize();
            return whole
                    ? element(fixed.isSigned() ? "i" : "u", fixed.getSize(), fixed.getByteOrder())
                    : Optional.empty();
        }
        if (type instanceof FloatingPoint floating && isStandard(floating)) {
            return element("f", floating.getSize(), floating.getByteOrder());
        }
        return Optional.empty();
    }

    /** A single number that stands at the start of some bytes. */
    static double single(ElementType type, ByteBuffer bytes) {
        double value = type.value(bytes.order(type.order()), 0);
        return type.isFloat() && type.bytes() == Float.BYTES ? Facts.beforeRounding((float) value) : value;
    }

    private static Optional<ElementType> element(String kind, int bytes, ByteOrder order) {
        return ElementType.of((order == ByteOrder.BIG_ENDIAN ? ">" : "<") + kind + bytes);
    }

    /** Whether floats are those of IEEE 754. */
    private static boolean isStandard(FloatingPoint type) {
        int exponent = switch (type.getSize()) {
            case 2 -> 5;
            case 4 -> 8;
            case 8 -> 11;
            default -> -1;
        };
        return type.getExponentSize() == exponent
                && type.getMantissaSize() == 8 * type.getSize() - 1 - exponent
                && type.getExponentBias() == (1 << (exponent - 1)) - 1
                && type.getBitOffset() == 0;
    }

    /** What the elements are if they are no numbers, for the user. */
    static String kind(DataType type) {
        if (type instanceof CompoundDataType compound) {
            List<String> names = compound.getMembers().stream()
                    .map(member -> member.getName())
                    .toList();
            return names.size() == 2 && PARTS_OF_COMPLEX.containsAll(names) ? "complex numbers" : "a table";
        }
        if (type instanceof StringData) {
            return "text";
        }
        if (type instanceof VariableLength) {
            return "texts or lists of varying length";
        }
        return type instanceof Reference ? "references" : "no plain numbers";
    }

    /** A single text; empty if it is none. */
    static Optional<String> text(DataType type, ByteBuffer bytes, HdfStorage storage) {
        if (!(type instanceof StringData) && !(type instanceof VariableLength)) {
            return Optional.empty();
        }
        Object value = DatasetReader.readDataset(type, bytes, new int[0], storage);
        return value instanceof String text ? Optional.of(text) : Optional.empty();
    }
}
