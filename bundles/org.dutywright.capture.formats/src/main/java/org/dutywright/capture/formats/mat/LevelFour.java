// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.mat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Level 4 has no signature: five numbers and a name stand before each variable. */
final class LevelFour {
    private static final int HEADER_BYTES = 20;
    private static final int LONGEST_NAME = 64;
    private static final int MOST_TYPE = 52;

    private LevelFour() {}

    static boolean isLikely(byte[] head) {
        return isLikely(head, ByteOrder.LITTLE_ENDIAN) || isLikely(head, ByteOrder.BIG_ENDIAN);
    }

    private static boolean isLikely(byte[] head, ByteOrder order) {
        if (head.length <= HEADER_BYTES) {
            return false;
        }
        ByteBuffer numbers = ByteBuffer.wrap(head).order(order);
        int type = numbers.getInt(0);
        int thousands = order == ByteOrder.LITTLE_ENDIAN ? 0 : 1;
        int nameBytes = numbers.getInt(16);
        boolean plausible = type / 1000 == thousands
                && type >= 0
                && type % 1000 <= MOST_TYPE
                && type % 10 <= 2
                && numbers.getInt(4) > 0
                && numbers.getInt(8) > 0
                && (numbers.getInt(12) & ~1) == 0
                && nameBytes >= 2
                && nameBytes <= LONGEST_NAME
                && head.length >= HEADER_BYTES + nameBytes
                && head[HEADER_BYTES + nameBytes - 1] == 0
                && Character.isLetter(head[HEADER_BYTES]);
        for (int i = 1; plausible && i < nameBytes - 1; i++) {
            int letter = head[HEADER_BYTES + i];
            plausible = Character.isLetterOrDigit(letter) || letter == '_';
        }
        return plausible;
    }
}
