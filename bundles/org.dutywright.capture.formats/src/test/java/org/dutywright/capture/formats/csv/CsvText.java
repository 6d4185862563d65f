// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Channel;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;

/** Text of tests as a file, and what is read from it. */
final class CsvText {
    static final ReadSettings AT_1_KHZ = new ReadSettings(OptionalDouble.of(1000), List.of(), Map.of());

    private CsvText() {}

    static Path file(Path folder, String text) throws IOException {
        return file(folder, text, StandardCharsets.UTF_8);
    }

    static Path file(Path folder, String text, Charset charset) throws IOException {
        return Files.write(folder.resolve("pedal.csv"), text.getBytes(charset));
    }

    static Capture read(Path folder, String text) throws UnreadableException, IOException {
        return read(folder, text, ReadSettings.none());
    }

    static Capture read(Path folder, String text, ReadSettings settings) throws UnreadableException, IOException {
        return new CsvCaptureReader().read(file(folder, text), settings, Progress.NONE);
    }

    static List<String> channels(Capture capture) {
        return capture.channels().stream().map(CsvText::text).toList();
    }

    private static String text(Channel channel) {
        return channel.name() + " in " + channel.unit();
    }

    static double[] valuesOf(Capture capture, int channel) throws IOException {
        double[] values = new double[(int) capture.sampleCount()];
        capture.samples().read(channel, 0, values, 0, values.length);
        return values;
    }

    static double[] secondsOf(Capture capture) throws IOException {
        double[] seconds = new double[(int) capture.sampleCount()];
        capture.timeBase().readSeconds(0, seconds, 0, seconds.length);
        return seconds;
    }
}
