// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.OutputFile;
import org.dutywright.capture.Overview;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.store.CaptureStore;
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

/** Recordings of one channel in binary formats: reading them, storing them, and summing them up for drawing. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(3)
@Warmup(iterations = 4)
@Measurement(iterations = 7)
public class BinaryReading {
    private static final int SAMPLE_RATE_HZ = 1_000_000;

    /** Samples of the channel. */
    @Param("50000000")
    public int samples;

    /** Format of the file. */
    @Param({"wav", "npy-int16", "npy-float32", "arrow-int16", "arrow-float32"})
    public String format;

    private Folder folder;
    private Path file;
    private Capture open;

    /** Writes the file. */
    @Setup
    public void write() throws UnreadableException, IOException {
        folder = new Folder();
        file = folder.write("capture", stream -> SampleFile.write(format, SAMPLE_RATE_HZ, samples, stream));
        if (format.startsWith("arrow")) {
            Path source = file;
            try (Capture capture = open(source)) {
                file = folder.write(
                        "capture.arrow", stream -> CaptureStore.write(capture, Map.of(), stream, Progress.NONE));
            }
        }
        open = open(file);
    }

    /** Deletes it. */
    @TearDown
    public void delete() throws IOException {
        open.close();
        folder.close();
    }

    private static Capture open(Path file) throws UnreadableException, IOException {
        ReadSettings settings = new ReadSettings(OptionalDouble.of(SAMPLE_RATE_HZ), List.of(), Map.of());
        return Captures.open(List.of(file), settings, Progress.NONE);
    }

    /** Opens and closes it. */
    @Benchmark
    public long read() throws UnreadableException, IOException {
        try (Capture capture = open(file)) {
            return capture.sampleCount();
        }
    }

    /** Writes what is open as a store. */
    @Benchmark
    public void store() throws IOException {
        OutputFile.write(
                folder.file("copy.arrow"), stream -> CaptureStore.write(open, Map.of(), stream, Progress.NONE));
    }

    /** Sums up what is open for drawing. */
    @Benchmark
    public Overview overview() throws IOException {
        return Overview.of(open, 0, Progress.NONE);
    }

    /** The least that anybody must do: reading the bytes. */
    @Benchmark
    public long bytes() throws IOException {
        return Bytes.smallest(file);
    }
}
