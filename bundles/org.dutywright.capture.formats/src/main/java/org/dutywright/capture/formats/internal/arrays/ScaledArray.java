// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal.arrays;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.CountScale;
import org.dutywright.capture.UnreadableException;

/**
 * An array with what the file says its whole numbers stand for.
 *
 * @param array the array
 * @param scale of whole numbers, if the file states one
 * @param missing the number that stands for none, NaN if the file states none
 */
record ScaledArray(NumberArray array, Optional<CountScale> scale, double missing) {
    private static final List<String> SCALES = List.of("scalefactor", "scale", "scaling", "slope");
    private static final List<String> OFFSETS = List.of("addoffset", "offset", "intercept");
    private static final List<String> MISSING = List.of("fillvalue", "missingvalue");

    static ScaledArray of(ArrayContents contents, NumberArray array) {
        boolean whole = array.kind() == NumberArray.Kind.COUNT || array.kind() == NumberArray.Kind.WHOLE;
        Optional<Double> scale = number(contents, array, SCALES).filter(value -> value != 0);
        Optional<Double> offset = number(contents, array, OFFSETS);
        Optional<CountScale> found = whole && (scale.isPresent() || offset.isPresent())
                ? Optional.of(new CountScale(scale.orElse(1.0), offset.orElse(0.0)))
                : Optional.empty();
        return new ScaledArray(array, found, number(contents, array, MISSING).orElse(Double.NaN));
    }

    private static Optional<Double> number(ArrayContents contents, NumberArray array, List<String> names) {
        return contents.facts()
                .beside(array.path(), names)
                .filter(Facts.Fact::isNumber)
                .map(Facts.Fact::number);
    }

    void read(long firstRow, int count, double[][] target) throws UnreadableException, IOException {
        array.read(firstRow, count, target);
        double factor = scale.map(CountScale::scale).orElse(1.0);
        double offset = scale.map(CountScale::offset).orElse(0.0);
        boolean plain = scale.isEmpty() && Double.isNaN(missing);
        for (int column = 0; !plain && column < array.columns(); column++) {
            double[] values = target[column];
            for (int i = 0; i < count; i++) {
                values[i] = values[i] == missing ? Double.NaN : values[i] * factor + offset;
            }
        }
    }

    /** What 16-bit counts of the array stand for; empty if it holds others. */
    Optional<CountScale> counts() {
        return array.kind() == NumberArray.Kind.COUNT
                ? Optional.of(scale.orElse(new CountScale(1, 0)))
                : Optional.empty();
    }
}
