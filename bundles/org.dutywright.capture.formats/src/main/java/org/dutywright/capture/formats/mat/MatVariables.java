// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.mat;

import java.util.Locale;
import java.util.Optional;
import org.dutywright.capture.formats.internal.arrays.ArrayContents;
import org.dutywright.capture.formats.internal.arrays.Facts;
import org.dutywright.capture.formats.internal.arrays.NumberArray;
import us.hebi.matlab.mat.format.Mat5Reader;
import us.hebi.matlab.mat.types.Array;
import us.hebi.matlab.mat.types.Char;
import us.hebi.matlab.mat.types.MatlabType;
import us.hebi.matlab.mat.types.Matrix;
import us.hebi.matlab.mat.types.ObjectStruct;
import us.hebi.matlab.mat.types.Sparse;
import us.hebi.matlab.mat.types.Struct;

/** Takes variables: arrays of numbers as such, single numbers and texts as facts, all others are noted. */
final class MatVariables {
    private static final int MOST_CHARACTERS = 200;
    private static final int LONGEST_NAME = 200;

    private final ArrayContents contents;

    MatVariables(ArrayContents contents) {
        this.contents = contents;
    }

    /** Whether a variable is worth reading; what is not is noted. */
    boolean wants(Mat5Reader.EntryHeader header) {
        MatlabType type = header.getType();
        boolean never = type == MatlabType.Cell
                || type == MatlabType.Object
                || type == MatlabType.Function
                || type == MatlabType.Sparse;
        if (never) {
            contents.leaveOut(plain(header.getName()), type.toString().toLowerCase(Locale.ROOT));
        } else if (header.isComplex()) {
            contents.leaveOut(plain(header.getName()), "complex numbers");
        }
        return !never && !header.isComplex();
    }

    void take(String path, Array value) {
        if (value instanceof ObjectStruct || value instanceof Sparse) {
            contents.leaveOut(path, value instanceof Sparse ? "sparse" : "an object");
        } else if (value instanceof Struct struct) {
            fields(path, struct);
        } else if (value instanceof Char text) {
            text(path, text);
        } else if (value instanceof Matrix matrix) {
            matrix(path, matrix);
        } else {
            contents.leaveOut(path, value.getType().toString());
        }
    }

    private void fields(String path, Struct struct) {
        if (struct.getNumElements() != 1) {
            contents.leaveOut(path, "an array of structs");
            return;
        }
        for (String name : struct.getFieldNames()) {
            Array field = struct.get(name);
            take(path + "/" + plain(name), field);
        }
    }

    private void text(String path, Char text) {
        int[] lengths = text.getDimensions();
        if (lengths.length == 2 && lengths[0] == 1 && lengths[1] > 0 && lengths[1] <= MOST_CHARACTERS) {
            contents.facts().text(Facts.groupOf(path), Facts.leafOf(path), text.getRow(0));
        }
    }

    private void matrix(String path, Matrix matrix) {
        if (matrix.isComplex()) {
            contents.leaveOut(path, "complex numbers");
        } else if (matrix.getNumElements() == 1) {
            double value = matrix.getType() == MatlabType.Single
                    ? Facts.beforeRounding(matrix.getFloat(0))
                    : matrix.getDouble(0);
            contents.facts().number(Facts.groupOf(path), Facts.leafOf(path), value);
        } else if (matrix.getNumElements() > 1) {
            Optional<NumberArray> array = MatArray.of(path, matrix);
            array.ifPresent(found -> contents.arrays().add(found));
            if (array.isEmpty()) {
                contents.leaveOut(path, "more than two dimensions, or more than 1000 rows and columns");
            }
        }
    }

    /** Names are shown in one line and are never paths. */
    static String plain(String name) {
        String line = name.replaceAll("[\\p{Cntrl}/]", " ").strip();
        return line.substring(0, Math.min(LONGEST_NAME, line.length()));
    }
}
