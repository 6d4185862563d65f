// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.export;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The writers that there are. */
public final class CaptureWriters {
    private static final List<CaptureWriter> ALL =
            List.of(new StoreWriter(), new TextWriter(), new WaveWriter(), new NumpyWriter());

    private CaptureWriters() {}

    /** The writer that the ending of a file's name asks for. */
    public static Optional<CaptureWriter> of(Path file) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        return ALL.stream().filter(writer -> name.endsWith(writer.ending())).findFirst();
    }

    /** The endings that are known. */
    public static List<String> endings() {
        return ALL.stream().map(CaptureWriter::ending).toList();
    }
}
