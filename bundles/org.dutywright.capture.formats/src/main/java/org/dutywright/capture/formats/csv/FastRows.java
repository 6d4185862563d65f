// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.dutywright.capture.UnreadableException;

/**
 * Reads text without quotes, as bytes, in chunks of whole lines. This thread reads chunks and takes their rows in the
 * order of the file; where there is another processor, the numbers of later chunks are read meanwhile. What comes out is
 * the same in either way. Memory holds a few chunks, whatever the length of the file.
 */
final class FastRows {
    private static final int CHUNK_BYTES = 1 << 18;
    /** Bytes behind a chunk that belong to no number and no line end. */
    private static final int SLACK_BYTES = 16;

    private final Path file;
    private final InputStream stream;
    private final int markBytes;
    private final Layout layout;
    private final ColumnPlan plan;
    private final Pace pace;
    private final int chunkBytes;
    private final RowSplitter splitter;
    private final RowCollector collector;
    private final Deque<Chunk> waiting = new ArrayDeque<>();
    private final Deque<Chunk> free = new ArrayDeque<>();
    private Optional<ExecutorService> executor = Optional.empty();

    /**
     * How to go about it.
     *
     * @param longestLine bytes of the longest line
     * @param helpers number of threads beside the caller's
     * @param lineByLine whether each line is looked at as if it held anything: slow, the oracle of tests
     */
    record Pace(int longestLine, int helpers, boolean lineByLine) {
        private static final int LONGEST_LINE = 1 << 20;
        private static final int MOST_HELPERS = 2;

        /** As fast as this machine can. */
        static Pace best() {
            int helpers = Math.min(MOST_HELPERS, Runtime.getRuntime().availableProcessors() - 1);
            return new Pace(LONGEST_LINE, helpers, false);
        }
    }

    /** Some whole lines, or what is left at the end of the file. */
    private final class Chunk {
        private final byte[] bytes = new byte[pace.longestLine() + SLACK_BYTES];
        private final CleanRows clean = new CleanRows(layout, plan, chunkBytes);
        private int to;
        private Optional<CompletableFuture<CleanRows>> parsing = Optional.empty();

        CleanRows parsedFrom(int at) {
            return at == 0 && parsing.isPresent() ? parsing.get().join() : clean.parse(bytes, at, to);
        }
    }

    FastRows(
            Path file,
            InputStream stream,
            HeadText head,
            Layout layout,
            ColumnPlan plan,
            RowCollector collector,
            Pace pace) {
        this.file = file;
        this.stream = stream;
        this.markBytes = head.markBytes();
        this.layout = layout;
        this.plan = plan;
        this.collector = collector;
        this.pace = pace;
        chunkBytes = Math.min(CHUNK_BYTES, pace.longestLine());
        splitter = new RowSplitter(head, layout, collector);
    }

    /** Gives all rows of values to the collector. */
    void read() throws UnreadableException, IOException, RowSplitter.QuoteFound {
        if (stream.skip(markBytes) != markBytes) {
            throw new IOException(file + " got shorter while it was read");
        }
        try {
            readChunks();
        } catch (CompletionException e) {
            throw new IllegalStateException("numbers could not be read by another thread", e.getCause());
        } finally {
            executor.ifPresent(ExecutorService::close);
        }
    }

    private void readChunks() throws UnreadableException, IOException, RowSplitter.QuoteFound {
        Chunk chunk = new Chunk();
        int filled = 0;
        while (true) {
            int wanted = Math.min(pace.longestLine(), filled < chunkBytes ? chunkBytes : filled + chunkBytes);
            filled += stream.readNBytes(chunk.bytes, filled, wanted - filled);
            boolean end = filled < wanted;
            chunk.to = end ? filled : wholeLines(chunk.bytes, filled);
            if (chunk.to == 0 && !end) {
                checkLength(filled);
                continue;
            }
            Chunk next = free.isEmpty() ? new Chunk() : free.poll();
            filled -= chunk.to;
            System.arraycopy(chunk.bytes, chunk.to, next.bytes, 0, filled);
            Arrays.fill(chunk.bytes, chunk.to, chunk.to + SLACK_BYTES, (byte) 0);
            start(chunk);
            takeWaiting(end || !splitter.inTable() ? 0 : pace.helpers());
            if (end) {
                return;
            }
            chunk = next;
        }
    }

    private void checkLength(int filled) throws UnreadableException, IOException, RowSplitter.QuoteFound {
        if (filled == pace.longestLine()) {
            takeWaiting(0);
            throw new UnreadableException(
                    file, "line " + splitter.line(), "is longer than " + filled + " bytes", "is it a text table?");
        }
    }

    private static int wholeLines(byte[] bytes, int filled) {
        int lineFeed = lastIndexOf((byte) '\n', bytes, filled);
        // the line feed of a carriage return at the very end may be still to come
        return 1 + (lineFeed >= 0 ? lineFeed : lastIndexOf((byte) '\r', bytes, filled - 1));
    }

    private static int lastIndexOf(byte wanted, byte[] bytes, int end) {
        int at = end - 1;
        while (at >= 0 && bytes[at] != wanted) {
            at--;
        }
        return at;
    }

    private void start(Chunk chunk) {
        boolean apart = pace.helpers() > 0 && !pace.lineByLine() && splitter.inTable();
        chunk.parsing = apart
                ? Optional.of(
                        CompletableFuture.supplyAsync(() -> chunk.clean.parse(chunk.bytes, 0, chunk.to), helpers()))
                : Optional.empty();
        waiting.add(chunk);
    }

    private ExecutorService helpers() {
        if (executor.isEmpty()) {
            executor = Optional.of(Executors.newFixedThreadPool(
                    pace.helpers(),
                    Thread.ofPlatform().name("reading text").daemon().factory()));
        }
        return executor.get();
    }

    private void takeWaiting(int rest) throws UnreadableException, IOException, RowSplitter.QuoteFound {
        while (waiting.size() > rest) {
            Chunk chunk = waiting.remove();
            take(chunk);
            free.add(chunk);
        }
    }

    private void take(Chunk chunk) throws UnreadableException, IOException, RowSplitter.QuoteFound {
        for (int at = 0; at < chunk.to; ) {
            if (splitter.inTable() && !pace.lineByLine()) {
                CleanRows rows = chunk.parsedFrom(at);
                if (rows.count() > 0 && collector.follows(rows)) {
                    collector.take(rows);
                    splitter.passed(rows.count());
                    at = rows.end();
                }
            }
            if (at < chunk.to) {
                at = splitter.take(chunk.bytes, at, chunk.to);
            }
        }
    }
}
