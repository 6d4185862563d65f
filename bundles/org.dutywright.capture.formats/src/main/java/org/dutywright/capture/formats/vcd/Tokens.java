// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.vcd;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;

/** Takes a dump word by word; words are separated by white space. */
final class Tokens {
    private static final int LONGEST_WORD = 1 << 16;

    private final ByteSource source;
    private byte[] bytes = new byte[64];
    private int length;
    private long start;
    private long line = 1;

    Tokens(ByteSource source) {
        this.source = source;
    }

    /** Goes to the next word; false at the end of the file. */
    boolean next() throws UnreadableException, IOException {
        int value = source.read();
        while (value >= 0 && value <= ' ') {
            if (value == '\n') {
                line++;
            }
            value = source.read();
        }
        length = 0;
        start = line;
        while (value > ' ') {
            if (length == LONGEST_WORD) {
                throw broken("a word is longer than " + LONGEST_WORD + " characters");
            }
            if (length == bytes.length) {
                bytes = Arrays.copyOf(bytes, 2 * length);
            }
            bytes[length++] = (byte) value;
            value = source.read();
        }
        if (value == '\n') {
            line++;
        }
        return length > 0;
    }

    /** The next word, which must be there. */
    String word(String what) throws UnreadableException, IOException {
        if (!next()) {
            throw broken("the file ends inside " + what);
        }
        return text();
    }

    /** Skips all up to the word that ends a section. */
    void skipToEnd(String section) throws UnreadableException, IOException {
        do {
            if (!next()) {
                throw broken("the file ends inside " + section);
            }
        } while (!is("$end"));
    }

    int length() {
        return length;
    }

    byte at(int index) {
        return bytes[index];
    }

    boolean is(String word) {
        if (word.length() != length) {
            return false;
        }
        for (int i = 0; i < length; i++) {
            if (bytes[i] != word.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    String text() {
        return text(0);
    }

    /** The word without its first {@code from} characters. */
    String text(int from) {
        return new String(bytes, from, length - from, StandardCharsets.ISO_8859_1);
    }

    /** The word as a number of time units after a sign of one character, -1 if it is none. */
    long time() {
        long ticks = length > 1 ? 0 : -1;
        for (int i = 1; i < length; i++) {
            int digit = bytes[i] - '0';
            if (digit < 0 || digit > 9 || ticks > (Long.MAX_VALUE - digit) / 10) {
                return -1;
            }
            ticks = 10 * ticks + digit;
        }
        return ticks;
    }

    UnreadableException broken(String problem) {
        return new UnreadableException(source.file(), "line " + start, problem, "export the recording again");
    }
}
