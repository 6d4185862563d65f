// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** A temporary folder for the files of one benchmark. */
final class Folder implements AutoCloseable {
    private static final int BUFFER_BYTES = 1 << 18;

    private final Path path;

    /** Writes a file to a stream. */
    @FunctionalInterface
    interface Content {
        void writeTo(OutputStream stream) throws IOException;
    }

    Folder() throws IOException {
        path = Files.createTempDirectory("dutywright-benchmark-");
    }

    /** Writes a file and says how long it is. */
    Path write(String name, Content content) throws IOException {
        Path file = path.resolve(name);
        try (OutputStream stream = new BufferedOutputStream(Files.newOutputStream(file), BUFFER_BYTES)) {
            content.writeTo(stream);
        }
        CostProfiler.operationBytes(Files.size(file));
        return file;
    }

    /** A file that is not there yet. */
    Path file(String name) {
        return path.resolve(name);
    }

    @Override
    public void close() throws IOException {
        List<Path> all;
        try (Stream<Path> walk = Files.walk(path)) {
            all = walk.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path each : all) {
            Files.delete(each);
        }
    }
}
