// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.comtrade;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;

/** Data as bytes, the least significant first: number, time stamp, analog values, 16 status bits to a word. */
final class BinaryRecords {
    private static final int BITS_A_WORD = 16;
    private static final long UNSIGNED = 0xFFFFFFFFL;

    private final ByteSource source;
    private final Config config;
    private final long bytes;
    private final byte[] block;
    private final ByteBuffer buffer;

    BinaryRecords(ByteSource source, Config config, long bytes) {
        this.source = source;
        this.config = config;
        this.bytes = bytes;
        int words = (config.digitals().size() + BITS_A_WORD - 1) / BITS_A_WORD;
        block = new byte[8 + config.analogs().size() * config.format().analogBytes() + 2 * words];
        buffer = ByteBuffer.wrap(block).order(ByteOrder.LITTLE_ENDIAN);
    }

    void read(RecordTaker taker) throws UnreadableException, IOException {
        double[] values = new double[config.columns()];
        for (long left = bytes; left >= block.length && !taker.isComplete(); left -= block.length) {
            long at = source.position();
            if (source.read(block, block.length) < block.length) {
                return;
            }
            long stamp = buffer.getInt(4) & UNSIGNED;
            decode(values);
            double number = (double) (buffer.getInt(0) & UNSIGNED);
            taker.take(number, stamp == UNSIGNED ? Double.NaN : (double) stamp, values, "byte", at);
        }
    }

    private void decode(double[] values) {
        int analogs = config.analogs().size();
        int width = config.format().analogBytes();
        for (int i = 0; i < analogs; i++) {
            values[i] = analog(8 + i * width);
        }
        int bits = 8 + analogs * width;
        for (int i = 0; i < config.digitals().size(); i++) {
            int word = buffer.getShort(bits + 2 * (i / BITS_A_WORD));
            values[analogs + i] = word >> i % BITS_A_WORD & 1;
        }
    }

    private double analog(int at) {
        return switch (config.format()) {
            case BINARY -> orMissing(buffer.getShort(at), Short.MIN_VALUE);
            case BINARY32 -> orMissing(buffer.getInt(at), Integer.MIN_VALUE);
            default -> buffer.getFloat(at);
        };
    }

    private static double orMissing(int value, int missing) {
        return value == missing ? Double.NaN : value;
    }
}
