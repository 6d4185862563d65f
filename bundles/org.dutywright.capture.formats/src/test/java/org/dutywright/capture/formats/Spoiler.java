// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Spoils bytes as broken disks, broken programs and people with bad intentions do. */
final class Spoiler {
    private static final int MOST_CHANGES = 6;
    private static final int[] EDGES = {0, 1, -1, 0x7F, 0x80, '\n', ',', '"', ' ', '-'};
    private static final int[] WORDS = {0, 1, -1, Integer.MAX_VALUE, Integer.MIN_VALUE, 0xFFFF, 1 << 30, 0x00FFFFFF};
    private static final List<String> PIECES = List.of(
            "99999999999999999999",
            "-1",
            "1e999",
            "NaN",
            "0",
            "4294967295",
            "\n",
            "\r\n",
            "\0",
            "\"",
            ",,,,",
            "\u00ff\u00fe",
            "$end",
            "$var",
            "#18446744073709551616",
            "--- file type: CFG ---",
            "data",
            "fmt ",
            "../../",
            "(999999999,)",
            "0x1A");

    private final Random random;

    Spoiler(Random random) {
        this.random = random;
    }

    byte[] spoil(byte[] sound, byte[] other) {
        byte[] bytes = sound.clone();
        for (int i = 1 + random.nextInt(MOST_CHANGES); i > 0 && bytes.length > 8; i--) {
            bytes = change(bytes, other);
        }
        return bytes;
    }

    private byte[] change(byte[] bytes, byte[] other) {
        int at = random.nextInt(bytes.length);
        int length = 1 + random.nextInt(Math.min(64, bytes.length - at));
        return switch (random.nextInt(9)) {
            case 0 -> with(bytes, at, (byte) (bytes[at] ^ (1 << random.nextInt(8))));
            case 1 -> with(bytes, at, (byte) EDGES[random.nextInt(EDGES.length)]);
            case 2 -> withWord(bytes, at, WORDS[random.nextInt(WORDS.length)]);
            case 3 -> Arrays.copyOf(bytes, at);
            case 4 -> replaced(bytes, at, at + length, new byte[0]);
            case 5 -> replaced(bytes, at, at, Arrays.copyOfRange(bytes, at, at + length));
            case 6 -> replaced(bytes, at, at + length, piece());
            case 7 -> replaced(bytes, at, at, piece());
            default -> replaced(bytes, at, at + length, cut(other));
        };
    }

    private byte[] piece() {
        return PIECES.get(random.nextInt(PIECES.size())).getBytes(StandardCharsets.ISO_8859_1);
    }

    private byte[] cut(byte[] other) {
        int at = random.nextInt(other.length);
        return Arrays.copyOfRange(other, at, Math.min(other.length, at + 1 + random.nextInt(200)));
    }

    private static byte[] with(byte[] bytes, int at, byte value) {
        bytes[at] = value;
        return bytes;
    }

    private static byte[] withWord(byte[] bytes, int at, int word) {
        for (int i = 0; i < 4 && at + i < bytes.length; i++) {
            bytes[at + i] = (byte) (word >> (8 * i));
        }
        return bytes;
    }

    private static byte[] replaced(byte[] bytes, int from, int to, byte[] by) {
        byte[] all = new byte[bytes.length - (to - from) + by.length];
        System.arraycopy(bytes, 0, all, 0, from);
        System.arraycopy(by, 0, all, from, by.length);
        System.arraycopy(bytes, to, all, from + by.length, bytes.length - to);
        return all;
    }
}
