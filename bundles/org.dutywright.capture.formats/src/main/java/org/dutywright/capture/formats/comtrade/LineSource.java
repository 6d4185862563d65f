// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.comtrade;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;

/** Takes a file line by line, and never a byte further, for bytes that are no text may follow. */
final class LineSource {
    private static final int LONGEST_LINE = 1 << 20;
    private static final int LONGEST_QUOTE = 40;
    private static final int END_OF_TEXT = 0x1A;

    private final ByteSource source;
    private byte[] bytes = new byte[256];
    private int length;
    private boolean terminated;
    private long number;

    LineSource(ByteSource source) {
        this.source = source;
    }

    /**
     * Goes to the next line.
     *
     * @return false at the end of the file, or of its text as the sign for it says
     */
    boolean next() throws UnreadableException, IOException {
        length = 0;
        terminated = false;
        number++;
        while (true) {
            int value = source.read();
            if (value == '\n') {
                terminated = true;
                return true;
            }
            if (value < 0 || value == END_OF_TEXT) {
                return length > 0;
            }
            if (length == LONGEST_LINE) {
                throw source.unreadable(source.position(), "a line is longer than 1 MiB", "export the record again");
            }
            if (length == bytes.length) {
                bytes = Arrays.copyOf(bytes, 2 * length);
            }
            bytes[length++] = (byte) value;
        }
    }

    /** The line's bytes, the first {@link #length} of a reused array. */
    byte[] bytes() {
        return bytes;
    }

    /** Number of bytes, the line end left out but for a carriage return. */
    int length() {
        return length;
    }

    /** Whether a line end follows. */
    boolean terminated() {
        return terminated;
    }

    /** Number of the line, from 1 on. */
    long number() {
        return number;
    }

    /** The line as text without the white space at its end: UTF-8, else ISO 8859-1. */
    String text() {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes, 0, length))
                    .toString()
                    .stripTrailing();
        } catch (CharacterCodingException e) {
            return new String(bytes, 0, length, StandardCharsets.ISO_8859_1).stripTrailing();
        }
    }

    /** A piece of a file for a message of one line. */
    static String quote(String text) {
        String line = text.replaceAll("[\\p{Cntrl}\\p{Zl}\\p{Zp}]", " ").strip();
        return line.length() <= LONGEST_QUOTE ? line : line.substring(0, LONGEST_QUOTE) + "…";
    }
}
