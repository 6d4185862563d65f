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
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.store.CaptureStore;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.CaptureMeasurer;
import org.dutywright.pulse.PulseSettings;
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

/**
 * Measuring two channels of a store: levels, every transition and cycle, events, and all measurements. Sparse is a carrier of
 * 200 Hz at 1 MS/s, where samples cost most; dense the same at 20 kS/s, where pulses do.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(3)
@Warmup(iterations = 3)
@Measurement(iterations = 5)
public class Measuring {
    private static final int SPARSE_HZ = 1_000_000;
    private static final int DENSE_HZ = 20_000;

    /** Samples of each channel. */
    @Param("20000000")
    public int samples;

    /** What the store holds. */
    @Param({"int16", "float32"})
    public String numbers;

    /** How often the signal changes. */
    @Param({"sparse", "dense"})
    public String signal;

    private Folder folder;
    private Path file;
    private Capture open;

    /** Writes the store. */
    @Setup
    public void write() throws UnreadableException, IOException {
        folder = new Folder();
        int rate = signal.equals("dense") ? DENSE_HZ : SPARSE_HZ;
        Path source = folder.write("capture", stream -> SampleFile.write("npy-" + numbers, rate, samples, stream));
        ReadSettings settings = new ReadSettings(OptionalDouble.of(rate), List.of(), Map.of());
        try (Capture capture = Captures.open(List.of(source), settings, Progress.NONE)) {
            file = folder.write(
                    "capture.arrow", stream -> CaptureStore.write(capture, Map.of(), stream, Progress.NONE));
        }
        open = Captures.open(List.of(file, file), ReadSettings.none(), Progress.NONE);
    }

    /** Deletes it. */
    @TearDown
    public void delete() throws IOException {
        open.close();
        folder.close();
    }

    private long measured(int threads) throws IOException {
        CaptureMeasurer measurer = CaptureMeasurer.withInstalled().withThreads(threads);
        try (CaptureMeasurement measurement =
                measurer.measure(open, Map.of(), PulseSettings.defaults(), Progress.NONE)) {
            return measurement.channels().get(0).cycleCount();
        }
    }

    /** Both channels by one thread. */
    @Benchmark
    public long oneThread() throws IOException {
        return measured(1);
    }

    /** Each channel by a thread of its own. */
    @Benchmark
    public long twoThreads() throws IOException {
        return measured(2);
    }

    /** The least that anybody must do for one of them: reading the bytes once. */
    @Benchmark
    public long bytes() throws IOException {
        return Bytes.smallest(file);
    }
}
