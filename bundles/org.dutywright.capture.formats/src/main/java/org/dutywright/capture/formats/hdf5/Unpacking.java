// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import com.ning.compress.lzf.LZFException;
import com.ning.compress.lzf.impl.VanillaChunkDecoder;
import io.jhdf.filter.ByteShuffleFilter;
import io.jhdf.object.message.FilterPipelineMessage.FilterInfo;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.dutywright.capture.UnreadableException;

/**
 * The filters that chunks were packed by, undone within limits: no chunk unpacks to more than it should hold, and a file
 * to no more than a multiple of its size. The library's own inflating has no limit.
 */
final class Unpacking {
    private static final int DEFLATE = 1;
    private static final int SHUFFLE = 2;
    private static final int FLETCHER32 = 3;
    private static final int LZF = 32000;
    private static final int CHECKSUM_BYTES = 4;
    private static final int FIRST_BYTES = 1 << 16;

    private final List<FilterInfo> filters;

    Unpacking(List<FilterInfo> filters) {
        this.filters = List.copyOf(filters);
    }

    /** A filter that is not undone here, named; empty if all are. */
    Optional<String> unknown() {
        return filters.stream()
                .filter(filter -> !List.of(DEFLATE, SHUFFLE, FLETCHER32, LZF).contains(filter.getId()))
                .map(filter -> "filter " + filter.getId() + " ('" + filter.getName() + "')")
                .findFirst();
    }

    boolean isEmpty() {
        return filters.isEmpty();
    }

    /**
     * Unpacks a chunk.
     *
     * @param packed its bytes in the file
     * @param skipped which filters were not used for it
     * @param bytes how many it must hold
     * @throws UnreadableException if it does not
     */
    byte[] unpack(byte[] packed, BitSet skipped, int bytes, ChunkPlace place) throws UnreadableException {
        byte[] data = packed;
        int most = bytes + CHECKSUM_BYTES * filters.size();
        for (int i = filters.size() - 1; i >= 0; i--) {
            if (skipped == null || !skipped.get(i)) {
                data = undo(filters.get(i), data, most, place);
            }
        }
        if (data.length < bytes) {
            throw place.broken("a chunk unpacks to " + data.length + " bytes, not " + bytes);
        }
        return data;
    }

    private static byte[] undo(FilterInfo filter, byte[] data, int most, ChunkPlace place) throws UnreadableException {
        try {
            return switch (filter.getId()) {
                case DEFLATE -> inflate(data, most, place);
                case SHUFFLE -> unshuffle(filter, data, place);
                // the sum is not verified, as the library does not; the shares of the deflate format have their own
                case FLETCHER32 -> Arrays.copyOf(data, Math.max(0, data.length - CHECKSUM_BYTES));
                default -> lzf(filter, data, most, place);
            };
        } catch (DataFormatException | LZFException | RuntimeException e) {
            throw place.broken("a chunk cannot be unpacked");
        }
    }

    private static byte[] unshuffle(FilterInfo filter, byte[] data, ChunkPlace place) throws UnreadableException {
        int[] settings = filter.getData();
        if (settings.length < 1 || settings[0] < 1 || settings[0] > 64) {
            throw place.broken("chunks are shuffled by an impossible width");
        }
        return new ByteShuffleFilter().decode(data, settings);
    }

    // the library's filter would load a decoder by unsafe means, of which newer Java machines warn the user
    private static byte[] lzf(FilterInfo filter, byte[] data, int most, ChunkPlace place)
            throws UnreadableException, LZFException {
        int[] settings = filter.getData();
        if (settings.length < 3 || settings[2] < 0 || settings[2] > most) {
            throw place.broken("chunks declare another size than they have");
        }
        if (data.length == settings[2]) {
            return data;
        }
        byte[] out = new byte[settings[2]];
        new VanillaChunkDecoder().decodeChunk(data, 0, out, 0, out.length);
        return out;
    }

    private static byte[] inflate(byte[] data, int most, ChunkPlace place)
            throws DataFormatException, UnreadableException {
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(data);
            byte[] out = new byte[Math.min(most, FIRST_BYTES)];
            int count = 0;
            while (!inflater.finished()) {
                if (count == out.length) {
                    if (out.length == most) {
                        return overlong(inflater, out, place);
                    }
                    out = Arrays.copyOf(out, (int) Math.min(most, 2L * out.length));
                }
                int done = inflater.inflate(out, count, out.length - count);
                count += done;
                if (done == 0 && (inflater.needsInput() || inflater.needsDictionary())) {
                    throw place.broken("the packed bytes of a chunk end too early");
                }
            }
            return count == out.length ? out : Arrays.copyOf(out, count);
        } finally {
            inflater.end();
        }
    }

    private static byte[] overlong(Inflater inflater, byte[] out, ChunkPlace place)
            throws DataFormatException, UnreadableException {
        if (inflater.inflate(new byte[1]) > 0) {
            throw place.broken("a chunk unpacks to more than it should hold");
        }
        return out;
    }
}
