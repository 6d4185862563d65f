// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import org.dutywright.capture.Progress;
import org.dutywright.capture.UnreadableException;

/**
 * Reads the whole file once: computes its SHA-256 and, while the bytes are at hand, makes sure that floating numbers
 * are finite and that stamps never go back.
 */
final class ContentCheck {
    private static final int PIECE_BYTES = 1 << 20;

    private final ArrowFile file;
    private final List<Stretch> stretches;
    private double lastStamp = Double.NEGATIVE_INFINITY;

    /** Bytes of the file that hold floating numbers of one column. */
    private record Stretch(long start, long end, NumberType type, boolean stamps) {}

    private ContentCheck(ArrowFile file, List<Stretch> stretches) {
        this.file = file;
        this.stretches = stretches;
    }

    /** Computes the SHA-256 only; reports each byte as work. */
    static String sha256(ArrowFile file, Progress progress) throws UnreadableException, IOException {
        return new ContentCheck(file, List.of()).run(progress);
    }

    /**
     * Computes the SHA-256 and checks columns.
     *
     * @param columns those to check
     * @param stamped whether the first of them holds stamps
     */
    static String check(ArrowFile file, List<Integer> columns, boolean stamped, Progress progress)
            throws UnreadableException, IOException {
        ArrowBatches batches = file.batches();
        List<Stretch> stretches = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            NumberType type = file.columns().get(columns.get(i)).number().orElseThrow();
            for (int batch = 0; !type.whole() && batch < batches.count(); batch++) {
                long start = batches.values(columns.get(i), batch);
                if (start % type.bytes() != 0) {
                    throw ArrowFile.damaged(file.path(), start, "holds a buffer that is not aligned");
                }
                long bytes = (batches.endRow(batch) - batches.firstRow(batch)) * type.bytes();
                stretches.add(new Stretch(start, start + bytes, type, stamped && i == 0));
            }
        }
        stretches.sort(Comparator.comparingLong(Stretch::start));
        return new ContentCheck(file, stretches).run(progress);
    }

    private String run(Progress progress) throws UnreadableException, IOException {
        MessageDigest digest = digest();
        byte[] piece = new byte[(int) Math.min(PIECE_BYTES, file.size())];
        ByteBuffer buffer = ByteBuffer.wrap(piece).order(ByteOrder.LITTLE_ENDIAN);
        int next = 0;
        for (long position = 0; position < file.size(); position += PIECE_BYTES) {
            progress.checkCancelled();
            int count = (int) Math.min(PIECE_BYTES, file.size() - position);
            ArrowFile.readFully(file.channel(), position, buffer.clear().limit(count));
            digest.update(piece, 0, count);
            while (next < stretches.size() && stretches.get(next).start() < position + count) {
                Stretch stretch = stretches.get(next);
                look(stretch, buffer, position, count);
                if (stretch.end() > position + count) {
                    break;
                }
                next++;
            }
            progress.worked(count);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private void look(Stretch stretch, ByteBuffer buffer, long position, int count) throws UnreadableException {
        int from = (int) Math.max(0, stretch.start() - position);
        int to = (int) Math.min(count, stretch.end() - position);
        for (int at = from; at < to; at += stretch.type().bytes()) {
            double value = stretch.type().at(buffer, at);
            if (!Double.isFinite(value)) {
                throw changed(position + at, "holds no number");
            }
            if (stretch.stamps()) {
                if (value < lastStamp) {
                    throw changed(position + at, "time goes back from " + lastStamp + " s to " + value + " s");
                }
                lastStamp = value;
            }
        }
    }

    private UnreadableException changed(long position, String how) {
        return new UnreadableException(
                file.path(),
                "byte " + position,
                how,
                "convert the source again; another program has changed this store");
    }

    private static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
