// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.numpy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dutywright.capture.formats.internal.ElementType;

/**
 * The fields of a structured array as its header lists them: {@code [('time_s', '<f8'), ('signal1 (mV)', '<i2')]}. Fields
 * of no single number (texts, arrays, structures) are passed over; so are those that only fill up, {@code ('', '|V4')}.
 *
 * @param fields those that hold a number
 * @param rowBytes bytes of all fields
 * @param end offset behind the list in the text
 */
record FieldList(List<Field> fields, int rowBytes, int end) {
    private static final int MOST_FIELDS = 4000;
    private static final int MOST_ROW_BYTES = 1 << 15;
    private static final Pattern OPEN = Pattern.compile("\\s*\\[");
    private static final Pattern FIELD = Pattern.compile(
            "\\s*\\(\\s*(?:'((?:[^'\\\\]|\\\\.){0,500}+)'|\"((?:[^\"\\\\]|\\\\.){0,500}+)\")\\s*,\\s*['\"]([^'\"]{1,20})['\"]\\s*,?\\s*\\)\\s*,?");
    private static final Pattern CLOSE = Pattern.compile("\\s*]");
    private static final Pattern SIZED = Pattern.compile("[<>|=]?([A-Za-z])(\\d{1,5})");
    private static final Pattern ESCAPE =
            Pattern.compile("\\\\(?:x([0-9a-fA-F]{2})|u([0-9a-fA-F]{4})|U([0-9a-fA-F]{8})|(.))", Pattern.DOTALL);

    /**
     * A field.
     *
     * @param name of the field
     * @param type of its number
     * @param offset of its first byte in a row
     */
    record Field(String name, ElementType type, int offset) {}

    /** Copies its list. */
    FieldList {
        fields = List.copyOf(fields);
    }

    /** Reads the list that begins at an offset; empty if it is none, or no field holds a number. */
    static Optional<FieldList> parse(String text, int from) {
        Matcher open = OPEN.matcher(text).region(from, text.length());
        if (!open.lookingAt()) {
            return Optional.empty();
        }
        List<Field> fields = new ArrayList<>();
        int at = open.end();
        int bytes = 0;
        Matcher field = FIELD.matcher(text).region(at, text.length());
        for (int count = 0; count < MOST_FIELDS && field.lookingAt(); count++) {
            OptionalInt size = bytes(field.group(3));
            if (size.isEmpty() || bytes + size.getAsInt() > MOST_ROW_BYTES) {
                return Optional.empty();
            }
            String name = unescaped(field.group(1) == null ? field.group(2) : field.group(1));
            Optional<ElementType> type = ElementType.of(field.group(3));
            if (type.isPresent()) {
                fields.add(new Field(name, type.get(), bytes));
            }
            bytes += size.getAsInt();
            at = field.end();
            field.region(at, text.length());
        }
        Matcher close = CLOSE.matcher(text).region(at, text.length());
        return !fields.isEmpty() && close.lookingAt()
                ? Optional.of(new FieldList(fields, bytes, close.end()))
                : Optional.empty();
    }

    private static OptionalInt bytes(String code) {
        Matcher sized = SIZED.matcher(code);
        if (!sized.matches()) {
            return OptionalInt.empty();
        }
        // texts count characters of four bytes
        int each = sized.group(1).equals("U") ? Integer.BYTES : 1;
        return OptionalInt.of(each * Integer.parseInt(sized.group(2)));
    }

    private static String unescaped(String literal) {
        StringBuilder text = new StringBuilder();
        Matcher escape = ESCAPE.matcher(literal);
        int at = 0;
        while (escape.find()) {
            text.append(literal, at, escape.start());
            at = escape.end();
            if (escape.group(4) != null) {
                text.append(escape.group(4).equals("n") || escape.group(4).equals("t") ? " " : escape.group(4));
                continue;
            }
            String digits = escape.group(1) != null
                    ? escape.group(1)
                    : escape.group(2) != null ? escape.group(2) : escape.group(3);
            long code = Long.parseLong(digits, 16);
            text.appendCodePoint(code <= Character.MAX_CODE_POINT ? (int) code : 0xFFFD);
        }
        return text.append(literal.substring(at)).toString();
    }
}
