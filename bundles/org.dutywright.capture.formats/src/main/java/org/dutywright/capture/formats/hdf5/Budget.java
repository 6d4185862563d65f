// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import org.dutywright.capture.UnreadableException;

/** What unpacking a file may take: kept in memory at one time, and altogether. */
final class Budget {
    /** Most bytes of one chunk. */
    static final int MOST_CHUNK_BYTES = 32 << 20;

    private static final long MOST_HELD_BYTES = 64L << 20;
    // deflate packs at most 1032:1; recordings that pack better than this hold nothing worth measuring
    private static final long MOST_TIMES = 200;
    private static final long ALWAYS_BYTES = 64L << 20;

    private final long mostUnpacked;
    private long held;
    private long unpacked;

    Budget(long fileBytes) {
        mostUnpacked = Math.max(ALWAYS_BYTES, MOST_TIMES * fileBytes);
    }

    /** Asks to keep bytes until the end. */
    void hold(long bytes, ChunkPlace place) throws UnreadableException {
        held += bytes;
        if (held > MOST_HELD_BYTES) {
            throw place.tooLarge(
                    "reading it side by side with the others keeps more than " + (MOST_HELD_BYTES >> 20)
                            + " MiB of chunks",
                    "pick fewer channels with --channel, or write the file with chunks of at most 1 MiB");
        }
    }

    /** Counts bytes that were unpacked. */
    void unpacked(long bytes, ChunkPlace place) throws UnreadableException {
        unpacked += bytes;
        if (unpacked > mostUnpacked) {
            throw place.broken(
                    "the file unpacks to more than " + mostUnpacked + " bytes, far more than it takes packed");
        }
    }
}
