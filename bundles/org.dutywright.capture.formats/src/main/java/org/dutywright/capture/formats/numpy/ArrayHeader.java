// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.numpy;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dutywright.capture.formats.internal.ElementType;

/**
 * The header of an array.
 *
 * @param type of its elements; of a structured array, of its first field
 * @param fields of a structured array, which has one dimension; empty if it is none
 * @param rowBytes bytes of one element, all fields of it
 * @param fortran whether the first index runs fastest
 * @param shape lengths of its dimensions
 */
record ArrayHeader(ElementType type, List<FieldList.Field> fields, int rowBytes, boolean fortran, List<Long> shape) {
    /** Bytes before the text of the header, its length included, that are enough for every version. */
    static final int PREFIX_BYTES = 12;

    /** The longest header that is read. */
    static final int MOST_BYTES = 1 << 16;

    private static final byte[] MAGIC = {(byte) 0x93, 'N', 'U', 'M', 'P', 'Y'};
    private static final Pattern ORDER = Pattern.compile("['\"]fortran_order['\"]\\s*:\\s*(True|False)");
    private static final Pattern TYPE = Pattern.compile("['\"]descr['\"]\\s*:\\s*['\"]([^'\"]{1,20})['\"]");
    private static final Pattern DESCRIPTION = Pattern.compile("['\"]descr['\"]\\s*:");
    private static final Pattern SHAPE = Pattern.compile("['\"]shape['\"]\\s*:\\s*\\(([\\d\\s,L]{0,200})\\)");

    /** Copies its lists. */
    ArrayHeader {
        fields = List.copyOf(fields);
        shape = List.copyOf(shape);
    }

    /** Whether bytes start an array of a version that is read. */
    static boolean isArray(byte[] head) {
        for (int i = 0; i < MAGIC.length; i++) {
            if (head.length < 8 || head[i] != MAGIC[i]) {
                return false;
            }
        }
        return head[6] >= 1 && head[6] <= 3;
    }

    /** Number of bytes before the text: 10 in version 1, 12 later. */
    static int prefixBytes(byte[] prefix) {
        return prefix[6] == 1 ? 10 : 12;
    }

    /** Number of bytes of the text, as declared. */
    static long textBytes(byte[] prefix) {
        ByteBuffer buffer = ByteBuffer.wrap(prefix).order(ByteOrder.LITTLE_ENDIAN);
        return prefix[6] == 1 ? buffer.getShort(8) & 0xFFFF : buffer.getInt(8) & 0xFFFFFFFFL;
    }

    /**
     * Reads the text of a header; empty if it is none, or one of elements that are no numbers.
     *
     * @param prefix the bytes before it, which tell how it is encoded
     */
    static Optional<ArrayHeader> parse(byte[] prefix, byte[] bytes) {
        String text = new String(bytes, prefix[6] < 3 ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8);
        Matcher description = DESCRIPTION.matcher(text);
        Optional<FieldList> fields = description.find() ? FieldList.parse(text, description.end()) : Optional.empty();
        return fields.isPresent() ? structured(fields.get(), text) : plain(text);
    }

    private static Optional<ArrayHeader> structured(FieldList list, String text) {
        // names of fields may look like anything
        String rest = text.substring(list.end());
        Matcher shape = SHAPE.matcher(rest);
        if (!shape.find()) {
            return Optional.empty();
        }
        return lengths(shape.group(1))
                .filter(lengths -> lengths.size() <= 1)
                .map(lengths ->
                        new ArrayHeader(list.fields().get(0).type(), list.fields(), list.rowBytes(), false, lengths));
    }

    private static Optional<ArrayHeader> plain(String text) {
        Matcher type = TYPE.matcher(text);
        Matcher order = ORDER.matcher(text);
        Matcher shape = SHAPE.matcher(text);
        if (!type.find() || !order.find() || !shape.find()) {
            return Optional.empty();
        }
        Optional<ElementType> element = ElementType.of(type.group(1));
        Optional<List<Long>> lengths = lengths(shape.group(1));
        return element.isEmpty() || lengths.isEmpty()
                ? Optional.empty()
                : Optional.of(new ArrayHeader(
                        element.get(),
                        List.of(),
                        element.get().bytes(),
                        order.group(1).equals("True"),
                        lengths.get()));
    }

    private static Optional<List<Long>> lengths(String text) {
        List<Long> lengths = new ArrayList<>();
        for (String part : text.split(",", -1)) {
            String digits = part.strip().replace("L", "");
            if (!digits.matches("\\d{0,18}")) {
                return Optional.empty();
            }
            if (!digits.isEmpty()) {
                lengths.add(Long.parseLong(digits));
            }
        }
        return Optional.of(lengths);
    }

    /** Number of samples: the longer one of two dimensions. */
    long rows() {
        return shape.stream().mapToLong(Long::longValue).max().orElse(1);
    }

    /** Number of columns. */
    long columns() {
        if (!fields.isEmpty()) {
            return fields.size();
        }
        return shape.size() < 2 ? 1 : Math.min(shape.get(0), shape.get(1));
    }

    /** The type of a column. */
    ElementType typeOf(int column) {
        return fields.isEmpty() ? type : fields.get(column).type();
    }

    /** Whether the values of one row lie together. */
    boolean rowsTogether() {
        boolean rowsFirst = shape.size() < 2 || shape.get(0) >= shape.get(1);
        return rowsFirst != fortran;
    }
}
