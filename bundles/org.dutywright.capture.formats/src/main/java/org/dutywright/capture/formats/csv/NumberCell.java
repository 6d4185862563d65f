// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;

/** Reads the number in a cell. Not for several threads. */
final class NumberCell {
    /** What instruments write where there is no number, or none in range. */
    private static final Set<String> MISSING = Set.of(
            "nan",
            "-",
            "--",
            "---",
            "n/a",
            "na",
            "null",
            "none",
            "inf",
            "+inf",
            "-inf",
            "infinity",
            "+infinity",
            "-infinity",
            "\u221e",
            "-\u221e",
            "+\u221e");

    /** What SCPI instruments write for infinity (9.9E37) and for no number (9.91E37): SCPI-1999, volume 1, 7.2.1. */
    private static final double NO_NUMBER = 9.9e37;

    private static final int LONGEST_NUMBER = 64;

    private final boolean decimalComma;
    private final byte[] scratch = new byte[LONGEST_NUMBER];

    NumberCell(boolean decimalComma) {
        this.decimalComma = decimalComma;
    }

    /**
     * Reads a cell without spaces around.
     *
     * @return the number, or NaN where the cell is empty or says that there is none
     * @throws NumberFormatException if it is anything else
     */
    double parse(byte[] bytes, int from, int to) {
        int length = to - from;
        if (length == 0) {
            return Double.NaN;
        }
        if (!looksLikeNumber(bytes, from, length)) {
            return missing(bytes, from, length);
        }
        double value;
        if (decimalComma) {
            if (length > LONGEST_NUMBER) {
                throw new NumberFormatException();
            }
            for (int i = 0; i < length; i++) {
                byte b = bytes[from + i];
                // a full stop is no decimal mark in such a file
                scratch[i] = (byte) (b == ',' ? '.' : b == '.' ? '?' : b);
            }
            value = JavaDoubleParser.parseDouble(scratch, 0, length);
        } else {
            value = JavaDoubleParser.parseDouble(bytes, from, length);
        }
        if (Double.isInfinite(value)) {
            throw new NumberFormatException();
        }
        return Math.abs(value) >= NO_NUMBER ? Double.NaN : value;
    }

    // the parser follows Java, where 1f and 0x1p3 are numbers too
    private boolean looksLikeNumber(byte[] bytes, int from, int length) {
        byte first = bytes[from];
        int digits = first == '-' || first == '+' ? 1 : 0;
        return digits < length
                && isDigitOrMark(bytes[from + digits])
                && isDigitOrMark(bytes[from + length - 1])
                && (length < digits + 2 || (bytes[from + digits + 1] | 0x20) != 'x');
    }

    private boolean isDigitOrMark(byte b) {
        return (b >= '0' && b <= '9') || b == (decimalComma ? ',' : '.');
    }

    private static double missing(byte[] bytes, int from, int length) {
        if (length < 12) {
            String text = new String(bytes, from, length, StandardCharsets.UTF_8);
            if (MISSING.contains(text.toLowerCase(Locale.ROOT))) {
                return Double.NaN;
            }
        }
        throw new NumberFormatException();
    }

    /** Whether a cell holds a number. */
    boolean isNumber(String cell) {
        return !Double.isNaN(valueOf(cell, Double.NaN));
    }

    /** Whether a cell holds a number, or says that there is none. */
    boolean isNumberOrMissing(String cell) {
        return !Double.isInfinite(valueOf(cell, Double.POSITIVE_INFINITY));
    }

    /** The number in a cell, NaN where there is none, or {@code otherwise} if it is anything else. */
    double valueOf(String cell, double otherwise) {
        byte[] bytes = cell.strip().getBytes(StandardCharsets.UTF_8);
        try {
            return parse(bytes, 0, bytes.length);
        } catch (NumberFormatException e) {
            return otherwise;
        }
    }
}
