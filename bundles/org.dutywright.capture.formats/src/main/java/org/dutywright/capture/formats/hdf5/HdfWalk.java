// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import io.jhdf.ObjectHeader;
import io.jhdf.Superblock;
import io.jhdf.SymbolTableEntry;
import io.jhdf.object.message.AttributeMessage;
import io.jhdf.object.message.DataSpaceMessage;
import io.jhdf.object.message.DataTypeMessage;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.dutywright.capture.Progress;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ElementType;
import org.dutywright.capture.formats.internal.arrays.ArrayContents;

/** Goes through the groups of a file, each object once, and takes what is in them. */
final class HdfWalk {
    private static final int MOST_OBJECTS = 20_000;
    private static final int MOST_DEPTH = 32;
    private static final int MOST_TEXT_BYTES = 4096;
    private static final String CLASS = "MATLAB_class";
    private static final Set<String> PLAIN_CLASSES = Set.of(
            "", "double", "single", "int8", "uint8", "int16", "uint16", "int32", "uint32", "int64", "uint64", "logical",
            "char", "struct");

    private final HdfStorage storage;
    private final ArrayContents contents;
    private final HdfDatasets datasets;
    private final Progress progress;
    private final Set<Long> seen = new HashSet<>();

    HdfWalk(HdfStorage storage, ArrayContents contents, Progress progress) {
        this.storage = storage;
        this.contents = contents;
        this.progress = progress;
        datasets = new HdfDatasets(storage, contents);
    }

    void walk() throws UnreadableException, IOException {
        visit("", storage.guarded("the file", this::root), 0);
    }

    private long root() {
        Superblock superblock = storage.getSuperblock();
        if (superblock instanceof Superblock.SuperblockV2V3 later) {
            return later.getRootGroupObjectHeaderAddress();
        }
        Superblock.SuperblockV0V1 first = (Superblock.SuperblockV0V1) superblock;
        long entry = first.getRootGroupSymbolTableAddress() - first.getBaseAddressByte();
        return new SymbolTableEntry(storage, entry).getObjectHeaderAddress();
    }

    private void visit(String path, long address, int depth) throws UnreadableException, IOException {
        progress.checkCancelled();
        if (!seen.add(address)) {
            contents.leaveOut(path, "another name of what is elsewhere in the file");
            return;
        }
        ChunkPlace place = new ChunkPlace(storage.file(), storage.byteOf(address), path);
        if (seen.size() > MOST_OBJECTS || depth > MOST_DEPTH) {
            throw place.tooLarge(
                    seen.size() > MOST_OBJECTS
                            ? "more than " + MOST_OBJECTS + " objects are in the file"
                            : "groups are nested deeper than " + MOST_DEPTH,
                    "export one recording a file");
        }
        String what = path.isEmpty() ? "its first group" : path;
        Optional<ObjectHeader> header = storage.supported(what, () -> ObjectHeader.readObjectHeader(storage, address));
        if (header.isEmpty()) {
            contents.leaveOut(
                    path, "kept in a layout that is not known, or in other files; write it for HDF5 1.10 instead");
            return;
        }
        Map<String, String> texts = attributes(path, header.get());
        if (header.get().hasMessageOfType(DataSpaceMessage.class)) {
            dataset(path, header.get(), texts);
        } else if (header.get().hasMessageOfType(DataTypeMessage.class)) {
            contents.leaveOut(path, "a type without values");
        } else {
            group(path, header.get(), texts, depth);
        }
    }

    private void dataset(String path, ObjectHeader header, Map<String, String> texts)
            throws UnreadableException, IOException {
        String matlabClass = texts.getOrDefault(CLASS, "");
        if (texts.containsKey("MATLAB_empty") || texts.containsKey("MATLAB_object_decode")) {
            contents.leaveOut(path, texts.containsKey("MATLAB_empty") ? "empty" : "an object");
        } else if (!PLAIN_CLASSES.contains(matlabClass)) {
            contents.leaveOut(path, "of class " + matlabClass);
        } else {
            datasets.take(path, header, matlabClass);
        }
    }

    private void group(String path, ObjectHeader header, Map<String, String> texts, int depth)
            throws UnreadableException, IOException {
        if (texts.containsKey("MATLAB_sparse") || !PLAIN_CLASSES.contains(texts.getOrDefault(CLASS, ""))) {
            contents.leaveOut(path, texts.containsKey("MATLAB_sparse") ? "sparse" : "of class " + texts.get(CLASS));
            return;
        }
        List<HdfLinks.Link> links =
                storage.guarded(path.isEmpty() ? "its first group" : path, () -> HdfLinks.of(storage, header));
        for (HdfLinks.Link link : links) {
            String name = plain(link.name());
            String inner = path.isEmpty() ? name : path + "/" + name;
            if (!link.hard()) {
                contents.leaveOut(inner, "a link, not followed");
            } else if (!name.equals("#refs#") && !name.equals("#subsystem#")) {
                visit(inner, link.address(), depth + 1);
            }
        }
    }

    /** Names are shown in one line and are never paths. */
    private static String plain(String name) {
        String line = name.replaceAll("[\\p{Cntrl}/]", " ").strip();
        return line.substring(0, Math.min(200, line.length()));
    }

    /** Takes single values as facts, and gives the texts back; of numbers their presence only. */
    private Map<String, String> attributes(String path, ObjectHeader header) throws UnreadableException {
        String what = "the attributes of " + (path.isEmpty() ? "the file" : path);
        Optional<List<AttributeMessage>> all = storage.supported(what, () -> HdfLinks.attributes(storage, header));
        Map<String, String> texts = new LinkedHashMap<>();
        for (AttributeMessage attribute : all.orElse(List.of())) {
            ByteBuffer bytes = attribute.getDataBuffer();
            boolean single = bytes != null
                    && storage.guarded(what, () -> attribute.getDataSpace().getTotalLength()) == 1;
            if (!single || bytes.remaining() > MOST_TEXT_BYTES) {
                continue;
            }
            String name = plain(attribute.getName());
            Optional<ElementType> number = HdfValues.number(attribute.getDataType());
            if (number.isPresent()) {
                double value = storage.guarded(what, () -> HdfValues.single(number.get(), bytes));
                contents.facts().number(path, name, value);
                texts.put(name, "");
            } else {
                text(what, attribute, bytes).ifPresent(text -> {
                    contents.facts().text(path, name, text);
                    texts.put(name, text);
                });
            }
        }
        return texts;
    }

    private Optional<String> text(String what, AttributeMessage attribute, ByteBuffer bytes)
            throws UnreadableException {
        return storage.supported(what, () -> HdfValues.text(attribute.getDataType(), bytes, storage))
                .flatMap(found -> found);
    }
}
