// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
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
    private static final double SAMPLE_RATE_HZ = 1e6;

    /** Rows of the table. */
    @Param("4000000")
    public int rows;

    private Folder folder;
    private Path file;

    /** Writes the table. */
    @Setup
    public void write() throws IOException {
        folder = new Folder();
        file = folder.write("capture.csv", this::table);
    }

    /** Deletes it. */
    @TearDown
    public void delete() throws IOException {
        folder.close();
    }

    private void table(OutputStream stream) throws IOException {
        Signal first = new Signal(SAMPLE_RATE_HZ);
        stream.write("time (s),signal1 (V),signal2 (V)\n".getBytes(StandardCharsets.US_ASCII));
        for (int row = 0; row < rows; row++) {
            double volts = first.next() * Signal.VOLTS_A_COUNT;
            // by hand: the formatter of the library would take minutes
            String line = decimal(row, 6) + "," + decimal(Math.round(volts * 1e5), 5) + ","
                    + decimal(Math.round((5 - volts) * 1e5), 5) + "\n";
            stream.write(line.getBytes(StandardCharsets.US_ASCII));
        }
    }

    private static String decimal(long units, int digits) {
        String text = Long.toString(Math.abs(units));
        String padded = "0".repeat(Math.max(0, digits + 1 - text.length())) + text;
        int point = padded.length() - digits;
        return (units < 0 ? "-" : "") + padded.substring(0, point) + "." + padded.substring(point);
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
