// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.nio.charset.Charset;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * How a text table is laid out, as far as the user says it; the reader finds out the rest.
 *
 * @param encoding of its characters
 * @param delimiter between its cells
 * @param decimalComma whether numbers have a decimal comma
 * @param headerLine line of headings, from 1; 0 if there is none
 * @param unitsLine line of units, from 1; 0 if there is none
 * @param firstLine first line of values, from 1
 */
public record TableSettings(
        Optional<Charset> encoding,
        Optional<Delimiter> delimiter,
        Optional<Boolean> decimalComma,
        OptionalLong headerLine,
        OptionalLong unitsLine,
        OptionalLong firstLine) {

    /** Checks the numbers of lines. */
    public TableSettings {
        if (headerLine.orElse(0) < 0 || unitsLine.orElse(0) < 0 || firstLine.orElse(1) < 1) {
            throw new IllegalArgumentException("lines count from 1");
        }
    }

    /** Nothing said. */
    public static TableSettings none() {
        return new TableSettings(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalLong.empty(),
                OptionalLong.empty(),
                OptionalLong.empty());
    }

    /** Whether nothing is said. */
    public boolean isNone() {
        return equals(none());
    }

    /** What these say, and where they say nothing, what the others say. */
    public TableSettings orElse(TableSettings others) {
        return new TableSettings(
                encoding.or(others::encoding),
                delimiter.or(others::delimiter),
                decimalComma.or(others::decimalComma),
                headerLine.isPresent() ? headerLine : others.headerLine,
                unitsLine.isPresent() ? unitsLine : others.unitsLine,
                firstLine.isPresent() ? firstLine : others.firstLine);
    }
}
