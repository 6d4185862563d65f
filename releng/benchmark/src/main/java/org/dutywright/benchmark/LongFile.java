// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** An array of one channel of any length, of which most is a hole: where the file system can, it takes little of the disk. */
final class LongFile {
    static final int SAMPLE_RATE_HZ = 1_000_000;

    private static final int PIECE_SAMPLES = 1 << 20;
    private static final int PIECES_A_SIGNAL = 16;

    private LongFile() {}

    /** Writes one anew. */
    static void write(Path file, long bytes) throws IOException {
        Files.deleteIfExists(file);
        long samples = bytes / Short.BYTES;
        Signal signal = new Signal(SAMPLE_RATE_HZ);
        ByteBuffer piece =
                ByteBuffer.allocateDirect(PIECE_SAMPLES * Short.BYTES).order(ByteOrder.LITTLE_ENDIAN);
        try (FileChannel channel = FileChannel.open(
                file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE, StandardOpenOption.SPARSE)) {
            ByteBuffer header = ByteBuffer.wrap(SampleFile.array("<i2", samples));
            long start = header.remaining();
            writeFully(channel, header, 0);
            for (long first = 0; first < samples; first += (long) PIECES_A_SIGNAL * PIECE_SAMPLES) {
                int count = (int) Math.min(PIECE_SAMPLES, samples - first);
                piece.clear();
                for (int i = 0; i < count; i++) {
                    piece.putShort((short) signal.next());
                }
                writeFully(channel, piece.flip(), start + first * Short.BYTES);
            }
            writeFully(channel, ByteBuffer.allocate(Short.BYTES), start + (samples - 1) * Short.BYTES);
        }
    }

    private static void writeFully(FileChannel channel, ByteBuffer bytes, long from) throws IOException {
        long position = from;
        while (bytes.hasRemaining()) {
            position += channel.write(bytes, position);
        }
    }
}
