// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** Text tables of a time column and two channels. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(3)
@Warmup(iterations = 4)
@Measurement(iterations = 7)
public class TextReading {
    /** Rows of the table. */
    @Param("4000000")
    public int rows;

    private Folder folder;
    private Path file;

    /** Writes the table. */
    @Setup
    public void write() throws IOException {
        folder = new Folder();
        file = folder.write("capture.csv", stream -> TextTable.write(rows, stream));
    }

    /** Deletes it. */
    @TearDown
    public void delete() throws IOException {
        folder.close();
    }

    /** The whole import: time base, spilling and SHA-256 included. */
    @Benchmark
    public long read() throws UnreadableException, IOException {
        try (Capture capture = Captures.open(List.of(file), ReadSettings.none(), Progress.NONE)) {
            return capture.sampleCount();
        }
    }

    /** The least that anybody must do: reading the bytes. */
    @Benchmark
    public long bytes() throws IOException {
        return Bytes.smallest(file);
    }
}
