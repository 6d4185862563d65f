// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.OutputFile;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;

/** Writing and reading stores, for tests. */
final class Stores {
    static final String SHA256 = "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08";

    private Stores() {}

    static Path write(Capture capture, Path file) throws IOException {
        OutputFile.write(file, stream -> CaptureStore.write(capture, Map.of(), stream, Progress.NONE));
        return file;
    }

    static Capture open(Path file) throws UnreadableException, IOException {
        return open(file, ReadSettings.none());
    }

    static Capture open(Path file, ReadSettings settings) throws UnreadableException, IOException {
        return Captures.open(List.of(file), settings, List.of(new ArrowCaptureReader()), Progress.NONE);
    }

    static double[] values(Capture capture, int channel) throws IOException {
        double[] values = new double[Math.toIntExact(capture.sampleCount())];
        capture.samples().read(channel, 0, values, 0, values.length);
        return values;
    }

    static double[] seconds(Capture capture) throws IOException {
        double[] seconds = new double[Math.toIntExact(capture.sampleCount())];
        capture.timeBase().readSeconds(0, seconds, 0, seconds.length);
        return seconds;
    }

    /** Files that a mutation may start from. */
    static List<byte[]> corpus(Path folder) throws IOException {
        List<byte[]> files = new ArrayList<>();
        double[] ramp = new double[200];
        for (int i = 0; i < ramp.length; i++) {
            ramp[i] = i / 8.0;
        }
        double[] stamps = ramp.clone();
        stamps[7] += 0.03;
        List<String> names = List.of("signal1", "signal2");
        List<String> units = List.of("V", "A");
        Path file = folder.resolve("corpus.arrow");
        files.add(Files.readAllBytes(write(Captures.ofArrays(names, units, -1, 1000, ramp, ramp), file)));
        files.add(Files.readAllBytes(write(Captures.ofStampedArrays(names, units, stamps, ramp, ramp), file)));
        return files;
    }
}
