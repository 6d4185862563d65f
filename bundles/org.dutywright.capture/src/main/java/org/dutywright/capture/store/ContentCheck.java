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
import java.util.Optional;
import org.dutywright.capture.BlockExtremes;
import org.dutywright.capture.CountScale;
import org.dutywright.capture.Progress;
import org.dutywright.capture.UnreadableException;

/**
 * Reads the whole file once: computes its SHA-256 and, while the bytes are at hand, makes sure that floating numbers
 * are finite and that stamps never go back, and sums up blocks of each channel for drawing.
 */
final class ContentCheck {
    private static final int PIECE_BYTES = 1 << 20;
    private static final int BLOCK = 1 << 13;

    private final ArrowFile file;
    private final List<Stretch> stretches;
    private final double[] block = new double[BLOCK];
    private double lastStamp = Double.NEGATIVE_INFINITY;

    /**
     * What was found.
     *
     * @param sha256 of the file
     * @param extremes of the blocks of each channel; empty where its numbers do not lie in the order of the rows
     */
    record Checked(String sha256, List<Optional<BlockExtremes>> extremes) {}

    /** Bytes of the file that hold numbers of one column. */
    private record Stretch(
            long start,
            long end,
            NumberType type,
            boolean stamps,
            Optional<CountScale> scale,
            Optional<BlockExtremes> extremes) {}

    private ContentCheck(ArrowFile file, List<Stretch> stretches) {
        this.file = file;
        this.stretches = stretches;
    }

    /** Computes the SHA-256 only; reports each byte as work. */
    static String sha256(ArrowFile file, Progress progress) throws UnreadableException, IOException {
        return new ContentCheck(file, List.of()).run(progress);
    }

    /**
     * Computes the SHA-256 and looks at columns.
     *
     * @param channels columns of channels
     * @param stamped whether the first column of the file holds stamps
     */
    static Checked check(ArrowFile file, List<ArrowSamples.Column> channels, boolean stamped, Progress progress)
            throws UnreadableException, IOException {
        List<Stretch> stretches = new ArrayList<>();
        if (stamped) {
            stretches.addAll(stretches(file, new ArrowSamples.Column(0, Optional.empty()), true, Optional.empty()));
        }
        List<Optional<BlockExtremes>> extremes = new ArrayList<>();
        for (ArrowSamples.Column channel : channels) {
            Optional<BlockExtremes> own = liesInOrder(file, channel.index())
                    ? Optional.of(BlockExtremes.ofOneOf(channels.size()))
                    : Optional.empty();
            stretches.addAll(stretches(file, channel, false, own));
            extremes.add(own);
        }
        stretches.sort(Comparator.comparingLong(Stretch::start));
        return new Checked(new ContentCheck(file, stretches).run(progress), extremes);
    }

    /** Whether a pass over the file meets the numbers of a column in the order of the rows, and none of them in two parts. */
    private static boolean liesInOrder(ArrowFile file, int column) {
        int bytes = file.columns().get(column).number().orElseThrow().bytes();
        long before = -1;
        for (int batch = 0; batch < file.batches().count(); batch++) {
            long start = file.batches().values(column, batch);
            if (start % bytes != 0 || start <= before) {
                return false;
            }
            before = start;
        }
        return true;
    }

    private static List<Stretch> stretches(
            ArrowFile file, ArrowSamples.Column column, boolean stamps, Optional<BlockExtremes> extremes)
            throws UnreadableException {
        ArrowBatches batches = file.batches();
        NumberType type = file.columns().get(column.index()).number().orElseThrow();
        List<Stretch> stretches = new ArrayList<>();
        for (int batch = 0; batch < batches.count() && (extremes.isPresent() || !type.whole()); batch++) {
            long start = batches.values(column.index(), batch);
            if (start % type.bytes() != 0) {
                throw ArrowFile.damaged(file.path(), start, "holds a buffer that is not aligned");
            }
            long end = start + (batches.endRow(batch) - batches.firstRow(batch)) * type.bytes();
            stretches.add(new Stretch(start, end, type, stamps, column.scale(), extremes));
        }
        return stretches;
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
        int bytes = stretch.type().bytes();
        int to = (int) Math.min(count, stretch.end() - position);
        for (int from = (int) Math.max(0, stretch.start() - position); from < to; from += BLOCK * bytes) {
            int numbers = Math.min(BLOCK, (to - from) / bytes);
            ByteBuffer some = buffer.slice(from, numbers * bytes).order(ByteOrder.LITTLE_ENDIAN);
            stretch.type().read(some, block, 0, numbers);
            if (!stretch.type().whole()) {
                checkFinite(numbers, position + from, bytes);
            }
            if (stretch.extremes().isPresent()) {
                stretch.scale().ifPresent(scale -> ArrowSamples.scale(scale, block, 0, numbers));
                stretch.extremes().get().add(block, numbers);
            }
            if (stretch.stamps()) {
                checkForward(numbers, position + from, bytes);
            }
        }
    }

    private void checkFinite(int numbers, long position, int bytes) throws UnreadableException {
        for (int i = 0; i < numbers; i++) {
            if (!(Math.abs(block[i]) <= Double.MAX_VALUE)) {
                throw changed(position + (long) i * bytes, "holds no number");
            }
        }
    }

    private void checkForward(int numbers, long position, int bytes) throws UnreadableException {
        for (int i = 0; i < numbers; i++) {
            if (block[i] < lastStamp) {
                throw changed(
                        position + (long) i * bytes, "time goes back from " + lastStamp + " s to " + block[i] + " s");
            }
            lastStamp = block[i];
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
