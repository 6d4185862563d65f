// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * The start of a file as text.
 *
 * @param text whole lines, without byte order mark
 * @param charset how it is encoded
 * @param markBytes length of the byte order mark
 */
record HeadText(String text, Charset charset, int markBytes) {
    private static final double MOST_CONTROLS = 0.01;
    /** Bytes that tell two bytes a character from one. */
    private static final int LOOKED_AT = 64;

    /**
     * Decodes.
     *
     * @param head first bytes of the file
     * @param complete whether they are all of it
     * @return empty if it is no text
     */
    static Optional<HeadText> of(byte[] head, boolean complete) {
        return of(head, complete, Optional.empty());
    }

    /** Decodes, where the user may say how. */
    static Optional<HeadText> of(byte[] head, boolean complete, Optional<Charset> said) {
        int mark = 0;
        Charset charset = said.orElse(StandardCharsets.UTF_8);
        if (startsWith(head, 0xEF, 0xBB, 0xBF)) {
            mark = 3;
            charset = said.orElse(StandardCharsets.UTF_8);
        } else if (startsWith(head, 0xFF, 0xFE)) {
            mark = 2;
            charset = said.orElse(StandardCharsets.UTF_16LE);
        } else if (startsWith(head, 0xFE, 0xFF)) {
            mark = 2;
            charset = said.orElse(StandardCharsets.UTF_16BE);
        } else if (said.isPresent()) {
            charset = said.get();
        } else if (isUtf16(head, 0)) {
            charset = StandardCharsets.UTF_16BE;
        } else if (isUtf16(head, 1)) {
            charset = StandardCharsets.UTF_16LE;
        } else if (decode(head, 0, charset, complete).isEmpty()) {
            // older instruments write µ and ° as one byte
            charset = StandardCharsets.ISO_8859_1;
        }
        Optional<String> text = decode(head, mark, charset, complete);
        if (text.isEmpty() || isBinary(text.get())) {
            return Optional.empty();
        }
        return Optional.of(new HeadText(complete ? text.get() : wholeLines(text.get()), charset, mark));
    }

    /** Whether bytes of delimiters and digits stand for themselves, so that lines can be split as bytes. */
    boolean isAsciiBased() {
        return !charset.equals(StandardCharsets.UTF_16LE) && !charset.equals(StandardCharsets.UTF_16BE);
    }

    /** Whether one of two bytes is always 0 and the other never: text of digits in two bytes a character. */
    private static boolean isUtf16(byte[] head, int zeros) {
        int looked = Math.min(LOOKED_AT, head.length / 2 * 2);
        for (int i = 0; i < looked; i++) {
            if ((head[i] == 0) != (i % 2 == zeros)) {
                return false;
            }
        }
        return looked > 0;
    }

    private static boolean startsWith(byte[] head, int... bytes) {
        if (head.length < bytes.length) {
            return false;
        }
        for (int i = 0; i < bytes.length; i++) {
            if ((head[i] & 0xFF) != bytes[i]) {
                return false;
            }
        }
        return true;
    }

    private static Optional<String> decode(byte[] head, int from, Charset charset, boolean complete) {
        CharsetDecoder decoder = charset.newDecoder();
        CharBuffer chars = CharBuffer.allocate(head.length + 1);
        // a head may end inside a character, a file may not
        CoderResult result = decoder.decode(ByteBuffer.wrap(head, from, head.length - from), chars, complete);
        try {
            if (result.isError()) {
                result.throwException();
            }
        } catch (CharacterCodingException e) {
            return Optional.empty();
        }
        return Optional.of(chars.flip().toString());
    }

    private static boolean isBinary(String text) {
        int controls = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == 0) {
                return true;
            }
            boolean usual = c >= ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f' || c == 0x1A;
            controls += usual ? 0 : 1;
        }
        return controls > text.length() * MOST_CONTROLS;
    }

    private static String wholeLines(String text) {
        int end = Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r', text.length() - 2));
        return end < 0 ? text : text.substring(0, end + 1);
    }
}
