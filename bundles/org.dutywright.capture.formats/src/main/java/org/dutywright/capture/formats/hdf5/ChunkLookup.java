// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import io.jhdf.ObjectHeader;
import io.jhdf.dataset.NoParent;
import io.jhdf.dataset.chunked.Chunk;
import io.jhdf.dataset.chunked.ChunkOffset;
import io.jhdf.dataset.chunked.ChunkedDatasetV3;
import io.jhdf.dataset.chunked.ChunkedDatasetV4;
import io.jhdf.object.message.DataLayoutMessage;
import io.jhdf.object.message.DataLayoutMessage.ChunkedDataLayoutMessage;
import java.util.Map;

/** Where the chunks of a dataset lie; the library finds them and keeps that to its datasets. */
interface ChunkLookup {
    /** Lengths of a chunk in each dimension. */
    int[] chunkLengths();

    /** All chunks that are stored, by the place of their first element. */
    Map<ChunkOffset, Chunk> chunks();

    /** For a dataset in chunks. */
    static ChunkLookup of(HdfStorage storage, ObjectHeader header, DataLayoutMessage layout) {
        return layout instanceof ChunkedDataLayoutMessage
                ? new Version3(storage, header)
                : new Version4(storage, header);
    }

    /** By the index of layout versions 1 to 3. */
    final class Version3 extends ChunkedDatasetV3 implements ChunkLookup {
        private Version3(HdfStorage storage, ObjectHeader header) {
            super(storage, header.getAddress(), "", NoParent.INSTANCE, header);
        }

        @Override
        public int[] chunkLengths() {
            return getChunkDimensions();
        }

        @Override
        public Map<ChunkOffset, Chunk> chunks() {
            return getChunkLookup();
        }
    }

    /** By any index of layout version 4. */
    final class Version4 extends ChunkedDatasetV4 implements ChunkLookup {
        private Version4(HdfStorage storage, ObjectHeader header) {
            super(storage, header.getAddress(), "", NoParent.INSTANCE, header);
        }

        @Override
        public int[] chunkLengths() {
            return getChunkDimensions();
        }

        @Override
        public Map<ChunkOffset, Chunk> chunks() {
            return getChunkLookup();
        }
    }
}
