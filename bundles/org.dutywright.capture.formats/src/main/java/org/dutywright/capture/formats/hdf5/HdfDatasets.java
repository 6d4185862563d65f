// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import io.jhdf.Constants;
import io.jhdf.ObjectHeader;
import io.jhdf.object.datatype.DataType;
import io.jhdf.object.message.DataLayoutMessage;
import io.jhdf.object.message.DataLayoutMessage.CompactDataLayoutMessage;
import io.jhdf.object.message.DataLayoutMessage.ContiguousDataLayoutMessage;
import io.jhdf.object.message.DataSpaceMessage;
import io.jhdf.object.message.DataTypeMessage;
import io.jhdf.object.message.FilterPipelineMessage;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ElementType;
import org.dutywright.capture.formats.internal.arrays.ArrayContents;
import org.dutywright.capture.formats.internal.arrays.Facts;
import org.dutywright.capture.formats.internal.arrays.NumberArray;

/** Takes datasets: arrays of numbers as such, single numbers and texts as facts, all others are noted. */
final class HdfDatasets {
    private static final int MOST_TEXT_BYTES = 4096;
    private static final long MOST_CHUNKS = 4_000_000;

    private final HdfStorage storage;
    private final ArrayContents contents;
    private final Budget budget;

    HdfDatasets(HdfStorage storage, ArrayContents contents) {
        this.storage = storage;
        this.contents = contents;
        budget = new Budget(storage.size());
    }

    /**
     * Takes one.
     *
     * @param matlabClass what a MAT-file says it is, empty if nothing
     */
    void take(String path, ObjectHeader header, String matlabClass) throws UnreadableException, IOException {
        DataType type = storage.guarded(
                path, () -> header.getMessageOfType(DataTypeMessage.class).getDataType());
        long[] lengths = storage.guarded(
                path,
                () -> header.getMessageOfType(DataSpaceMessage.class)
                        .getDataSpace()
                        .getDimensionsAsLong());
        long elements = storage.guarded(
                path,
                () -> header.getMessageOfType(DataSpaceMessage.class)
                        .getDataSpace()
                        .getTotalLength());
        DataLayoutMessage layout = storage.guarded(path, () -> header.getMessageOfType(DataLayoutMessage.class));
        Optional<ElementType> number = HdfValues.number(type);
        if (number.isEmpty()) {
            takeOther(path, type, elements, layout);
        } else if (matlabClass.equals("char")) {
            takeCharacters(path, number.get(), elements, layout);
        } else if (elements == 1) {
            single(path, number.get(), layout);
        } else if (elements > 1) {
            array(path, number.get(), lengths, header, layout);
        }
    }

    private void takeOther(String path, DataType type, long elements, DataLayoutMessage layout)
            throws UnreadableException {
        Optional<String> text = Optional.empty();
        if (elements == 1 && type.getSize() > 0 && type.getSize() <= MOST_TEXT_BYTES) {
            Optional<ByteBuffer> bytes = bytes(path, type.getSize(), layout);
            if (bytes.isPresent()) {
                text = storage.supported(path, () -> HdfValues.text(type, bytes.get(), storage))
                        .flatMap(found -> found);
            }
        }
        if (text.isPresent()) {
            contents.facts().text(Facts.groupOf(path), Facts.leafOf(path), text.get());
        } else {
            contents.leaveOut(path, HdfValues.kind(type));
        }
    }

    private void takeCharacters(String path, ElementType type, long elements, DataLayoutMessage layout)
            throws UnreadableException {
        Optional<ByteBuffer> bytes = elements * type.bytes() <= MOST_TEXT_BYTES
                ? bytes(path, (int) elements * type.bytes(), layout)
                : Optional.empty();
        if (bytes.isEmpty()) {
            contents.leaveOut(path, "text");
            return;
        }
        bytes.get().order(type.order());
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < elements; i++) {
            text.append((char) (int) type.value(bytes.get(), i * type.bytes()));
        }
        contents.facts().text(Facts.groupOf(path), Facts.leafOf(path), text.toString());
    }

    private void single(String path, ElementType type, DataLayoutMessage layout) throws UnreadableException {
        Optional<ByteBuffer> bytes = bytes(path, type.bytes(), layout);
        bytes.ifPresent(found ->
                contents.facts().number(Facts.groupOf(path), Facts.leafOf(path), HdfValues.single(type, found)));
    }

    /** The bytes of something small that is not in chunks. */
    private Optional<ByteBuffer> bytes(String path, int count, DataLayoutMessage layout) throws UnreadableException {
        if (layout instanceof CompactDataLayoutMessage compact) {
            ByteBuffer bytes = compact.getDataBuffer();
            return bytes.remaining() >= count ? Optional.of(bytes) : Optional.empty();
        }
        if (layout instanceof ContiguousDataLayoutMessage plain && plain.getAddress() != Constants.UNDEFINED_ADDRESS) {
            return Optional.of(storage.guarded(path, () -> storage.readBufferFromAddress(plain.getAddress(), count)));
        }
        return Optional.empty();
    }

    private void array(String path, ElementType type, long[] lengths, ObjectHeader header, DataLayoutMessage layout)
            throws UnreadableException, IOException {
        Optional<Shape> shape = Shape.of(lengths);
        if (shape.isEmpty()) {
            contents.leaveOut(
                    path, lengths.length > 2 ? "more than two dimensions" : "more than 1000 rows and columns");
            return;
        }
        Optional<NumberArray> array = Optional.empty();
        if (layout instanceof ContiguousDataLayoutMessage plain) {
            if (plain.getAddress() != Constants.UNDEFINED_ADDRESS) {
                array = Optional.of(new PlainArray(
                        path, type, shape.get(), storage.getFileChannel(), storage.byteOf(plain.getAddress())));
            }
        } else if (layout instanceof CompactDataLayoutMessage compact) {
            array = Optional.of(new HeaderArray(path, type, shape.get(), compact.getDataBuffer()));
        } else {
            array = chunked(path, type, shape.get(), header, layout);
        }
        if (array.isPresent() && array.get().heldRows() > 0) {
            contents.arrays().add(array.get());
        } else if (array.isPresent() || layout instanceof ContiguousDataLayoutMessage) {
            contents.leaveOut(path, "its values are not in the file");
        }
    }

    private Optional<NumberArray> chunked(
            String path, ElementType type, Shape shape, ObjectHeader header, DataLayoutMessage layout)
            throws UnreadableException {
        ChunkPlace place = new ChunkPlace(storage.file(), storage.byteOf(header.getAddress()), path);
        ChunkLookup lookup = storage.guarded(path, () -> ChunkLookup.of(storage, header, layout));
        int[] lengths = storage.guarded(path, lookup::chunkLengths);
        Unpacking unpacking = new Unpacking(storage.guarded(path, () -> filters(header)));
        if (unpacking.unknown().isPresent()) {
            contents.leaveOut(path, "packed by " + unpacking.unknown().get() + "; write it with deflate instead");
            return Optional.empty();
        }
        checkChunks(lengths, shape, type, place);
        return Optional.of(new ChunkedArray(
                storage, path, type, shape, lengths, storage.guarded(path, lookup::chunks), unpacking, budget));
    }

    private static List<FilterPipelineMessage.FilterInfo> filters(ObjectHeader header) {
        return header.hasMessageOfType(FilterPipelineMessage.class)
                ? header.getMessageOfType(FilterPipelineMessage.class).getFilters()
                : List.of();
    }

    /** The library makes an entry for every chunk that the dimensions call for in some of its indexes. */
    private void checkChunks(int[] lengths, Shape shape, ElementType type, ChunkPlace place)
            throws UnreadableException {
        long bytes = type.bytes();
        for (int length : lengths) {
            if (length < 1 || length > Budget.MOST_CHUNK_BYTES) {
                throw place.broken("its chunks are " + length + " elements long");
            }
            bytes *= length;
            if (bytes > Budget.MOST_CHUNK_BYTES) {
                throw place.tooLarge(
                        "its chunks take " + bytes + " bytes or more, each of which is unpacked as a whole",
                        "write the file with chunks of at most 1 MiB");
            }
        }
        if (lengths.length != shape.dimensions()) {
            throw place.broken("its chunks have " + lengths.length + " dimensions, it has " + shape.dimensions());
        }
        long along = shape.rowsTogether() || lengths.length == 1 ? lengths[0] : lengths[1];
        long across = lengths.length == 1 ? 1 : shape.rowsTogether() ? lengths[1] : lengths[0];
        double chunks = Math.ceil((double) shape.rows() / along) * Math.ceil((double) shape.columns() / across);
        if (chunks > Math.min(MOST_CHUNKS, 1024 + storage.size() / 8)) {
            throw place.tooLarge(
                    "it declares " + shape.rows() + " rows in " + (long) chunks + " chunks, more than "
                            + (chunks > MOST_CHUNKS ? MOST_CHUNKS : "the file has room for"),
                    "write the file with larger chunks, or with the rows that were recorded");
        }
    }
}
