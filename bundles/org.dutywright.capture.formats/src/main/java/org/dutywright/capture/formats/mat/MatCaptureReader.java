// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.mat;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Source;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;
import org.dutywright.capture.formats.internal.arrays.ArrayCapture;
import org.dutywright.capture.formats.internal.arrays.ArrayContents;
import us.hebi.matlab.mat.types.MatFile;

/** Reads MAT-files of level 5; what it takes is said in the package description. */
@ServiceProvider(CaptureReader.class)
public final class MatCaptureReader implements CaptureReader {
    private static final int CERTAIN = 100;
    private static final int LIKELY = 70;
    private static final int HEADER_BYTES = 128;
    private static final String IDENTIFIER = "MATLAB 5.0 MAT-file";

    /** Makes the reader. */
    public MatCaptureReader() {}

    @Override
    public String id() {
        return "mat";
    }

    @Override
    public String title() {
        return "MAT-file of level 5";
    }

    @Override
    public Set<ReadSettings.Part> takes() {
        return Set.of(ReadSettings.Part.TIME);
    }

    @Override
    public int likelihood(byte[] head) {
        if (isLevel5(head)) {
            return CERTAIN;
        }
        return LevelFour.isLikely(head) ? LIKELY : 0;
    }

    private static boolean isLevel5(byte[] head) {
        return head.length >= HEADER_BYTES
                && new String(head, 0, IDENTIFIER.length(), StandardCharsets.ISO_8859_1).equals(IDENTIFIER)
                && ((head[126] == 'I' && head[127] == 'M') || (head[126] == 'M' && head[127] == 'I'));
    }

    @Override
    public Capture read(Path file, ReadSettings settings, Progress progress) throws UnreadableException, IOException {
        byte[] head;
        try (var stream = Files.newInputStream(file)) {
            head = stream.readNBytes(1 << 12);
        }
        if (!isLevel5(head)) {
            boolean four = LevelFour.isLikely(head);
            throw new UnreadableException(
                    file,
                    "byte 0",
                    four ? "is a MAT-file of level 4" : "is no MAT-file of level 5",
                    "save it with -v7 or -v7.3");
        }
        Source sum;
        try (ByteSource source = ByteSource.open(file, progress)) {
            sum = source.source();
        }
        try (FileChannel channel = FileChannel.open(file);
                MatSpill spill = MatSpill.open(channel.size())) {
            ArrayContents contents = new ArrayContents(file, '.');
            parse(new MatInput(file, spill, progress), channel, contents);
            return ArrayCapture.read(contents, settings, sum, progress);
        }
    }

    private static void parse(MatInput input, FileChannel channel, ArrayContents contents)
            throws UnreadableException, IOException {
        MatVariables variables = new MatVariables(contents);
        MatSource source = new MatSource(input, channel, 0, channel.size(), -1);
        MatFile parsed;
        try {
            parsed = new MatParser(source, input)
                    .setEntryFilter(variables::wants)
                    .readMat();
        } catch (IOException e) {
            // the library wraps whatever happens; what it was is in the input
            throw input.unreadable();
        }
        if (input.isRefused()) {
            throw input.unreadable();
        }
        for (MatFile.Entry entry : parsed.getEntries()) {
            variables.take(MatVariables.plain(entry.getName()), entry.getValue());
        }
    }
}
