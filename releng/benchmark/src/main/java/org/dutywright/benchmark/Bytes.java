// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;

/** Reads a file into a buffer that is used again, and looks at all of it: what no reader can be faster than. */
final class Bytes {
    private static final int PIECE = 1 << 18;

    private Bytes() {}

    /** The smallest of the words of four bytes in a file. */
    static int smallest(Path file) throws IOException {
        int smallest = Integer.MAX_VALUE;
        int[] words = new int[PIECE / Integer.BYTES];
        ByteBuffer buffer = ByteBuffer.allocateDirect(PIECE).order(ByteOrder.nativeOrder());
        try (FileChannel channel = FileChannel.open(file)) {
            while (channel.read(buffer.clear()) > 0) {
                int count = buffer.flip().remaining() / Integer.BYTES;
                buffer.asIntBuffer().get(words, 0, count);
                for (int i = 0; i < count; i++) {
                    // a second operation beside it makes the compiler use vectors
                    smallest = Math.min(smallest, words[i] ^ 1);
                }
            }
        }
        return smallest;
    }
}
