// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Source;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;
import org.dutywright.capture.formats.internal.arrays.ArrayCapture;
import org.dutywright.capture.formats.internal.arrays.ArrayContents;

/** Reads HDF5 files and MAT-files of level 7.3; what it takes is said in the package description. */
@ServiceProvider(CaptureReader.class)
public final class Hdf5CaptureReader implements CaptureReader {
    private static final int CERTAIN = 100;
    private static final int HEAD_BYTES = 1 << 16;
    private static final byte[] SIGNATURE = {(byte) 0x89, 'H', 'D', 'F', '\r', '\n', 0x1A, '\n'};
    private static final byte[] MATLAB = "MATLAB".getBytes(StandardCharsets.US_ASCII);

    // what the library finds odd in a file is said once, in one line, by this reader; its log would say it beside that
    private static final Logger LIBRARY = Logger.getLogger("io.jhdf");

    /** Makes the reader. */
    public Hdf5CaptureReader() {
        if (LIBRARY.getLevel() == null) {
            LIBRARY.setLevel(Level.OFF);
        }
    }

    @Override
    public String id() {
        return "hdf5";
    }

    @Override
    public String title() {
        return "HDF5 file, MAT-file of level 7.3";
    }

    @Override
    public Set<ReadSettings.Part> takes() {
        return Set.of(ReadSettings.Part.TIME);
    }

    @Override
    public int likelihood(byte[] head) {
        return signatureAt(head) >= 0 ? CERTAIN : 0;
    }

    /** The signature stands at the start, or after a block of 512 bytes or a power of two times that. */
    private static int signatureAt(byte[] head) {
        for (int at = 0; at + SIGNATURE.length <= head.length; at = at == 0 ? 512 : 2 * at) {
            if (Arrays.equals(SIGNATURE, 0, SIGNATURE.length, head, at, at + SIGNATURE.length)) {
                return at;
            }
        }
        return -1;
    }

    @Override
    public Capture read(Path file, ReadSettings settings, Progress progress) throws UnreadableException, IOException {
        byte[] head;
        try (var stream = Files.newInputStream(file)) {
            head = stream.readNBytes(HEAD_BYTES);
        }
        int offset = signatureAt(head);
        if (offset < 0) {
            throw new UnreadableException(file, "byte 0", "is no HDF5 file", "export it again as HDF5");
        }
        Source sum;
        try (ByteSource source = ByteSource.open(file, progress)) {
            sum = source.source();
        }
        boolean matlab = Arrays.equals(MATLAB, 0, MATLAB.length, head, 0, MATLAB.length);
        try (FileChannel channel = FileChannel.open(file)) {
            ArrayContents contents = new ArrayContents(file, matlab ? '.' : '/');
            new HdfWalk(HdfStorage.open(file, channel, offset), contents, progress).walk();
            return ArrayCapture.read(contents, settings, sum, progress);
        }
    }
}
