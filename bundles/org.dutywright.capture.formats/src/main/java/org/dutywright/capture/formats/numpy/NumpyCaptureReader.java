// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.numpy;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Source;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;

/** Reads NumPy arrays; what it takes is said in the package description. */
@ServiceProvider(CaptureReader.class)
public final class NumpyCaptureReader implements CaptureReader {
    private static final int CERTAIN = 100;
    private static final int LIKELY = 80;
    private static final int LOCAL_HEADER_BYTES = 30;

    /** Makes the reader. */
    public NumpyCaptureReader() {}

    @Override
    public String id() {
        return "numpy";
    }

    @Override
    public String title() {
        return "NumPy array (npy, npz)";
    }

    @Override
    public int likelihood(byte[] head) {
        if (ArrayHeader.isArray(head)) {
            return CERTAIN;
        }
        return isArchive(head) ? LIKELY : 0;
    }

    /** Whether the first entry of an archive is named as an array. */
    private static boolean isArchive(byte[] head) {
        if (head.length < LOCAL_HEADER_BYTES || head[0] != 'P' || head[1] != 'K' || head[2] != 3 || head[3] != 4) {
            return false;
        }
        int length = (head[26] & 0xFF) | (head[27] & 0xFF) << 8;
        int there = Math.min(length, head.length - LOCAL_HEADER_BYTES);
        return new String(head, LOCAL_HEADER_BYTES, there, StandardCharsets.ISO_8859_1).endsWith(".npy");
    }

    @Override
    public Set<ReadSettings.Part> takes() {
        return Set.of(ReadSettings.Part.TIME);
    }

    @Override
    public Capture read(Path file, ReadSettings settings, Progress progress) throws UnreadableException, IOException {
        byte[] head;
        try (var stream = Files.newInputStream(file)) {
            head = stream.readNBytes(1 << 12);
        }
        if (ArrayHeader.isArray(head)) {
            return array(file, settings, progress);
        }
        if (!isArchive(head)) {
            throw new UnreadableException(
                    file, "byte 0", "is no NumPy array", "save it with numpy.save or numpy.savez");
        }
        try (ByteSource source = ByteSource.open(file, progress);
                Archive archive = Archive.unpack(source)) {
            Source sum = source.source();
            Map<String, ArrayData> arrays = new LinkedHashMap<>();
            for (Map.Entry<String, Archive.Extent> entry : archive.arrays().entrySet()) {
                Archive.Extent extent = entry.getValue();
                arrays.put(
                        entry.getKey(),
                        ArrayData.open(file, entry.getKey(), archive.channel(), extent.start(), extent.bytes()));
            }
            return new ArrayTable(file, arrays, settings).read(sum, progress);
        }
    }

    private static Capture array(Path file, ReadSettings settings, Progress progress)
            throws UnreadableException, IOException {
        try (ByteSource source = ByteSource.open(file, progress);
                FileChannel channel = FileChannel.open(file)) {
            ArrayData data = ArrayData.open(file, "", channel, 0, channel.size());
            ArrayTable table = new ArrayTable(file, Map.of("", data), settings);
            return table.isEven() ? table.readPlaced(source, progress) : table.read(source.source(), progress);
        }
    }
}
