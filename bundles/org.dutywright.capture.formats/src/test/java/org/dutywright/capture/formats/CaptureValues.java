// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Channel;
import org.dutywright.capture.ReadSettings;

/** What tests look at in a short capture. */
public final class CaptureValues {
    private CaptureValues() {}

    /** All values of a channel. */
    public static double[] valuesOf(Capture capture, int channel) throws IOException {
        double[] values = new double[Math.toIntExact(capture.sampleCount())];
        capture.samples().read(channel, 0, values, 0, values.length);
        return values;
    }

    /** All instants. */
    public static double[] secondsOf(Capture capture) throws IOException {
        double[] seconds = new double[Math.toIntExact(capture.sampleCount())];
        capture.timeBase().readSeconds(0, seconds, 0, seconds.length);
        return seconds;
    }

    /** Name and unit of each channel, "signal1 in V". */
    public static List<String> channels(Capture capture) {
        return capture.channels().stream().map(CaptureValues::text).toList();
    }

    private static String text(Channel channel) {
        return channel.unit().isEmpty() ? channel.name() : channel.name() + " in " + channel.unit();
    }

    /** Settings that say a sample rate. */
    public static ReadSettings at(double sampleRateHz) {
        return new ReadSettings(OptionalDouble.of(sampleRateHz), List.of(), Map.of());
    }

    /** Settings that pick columns as they are called. */
    public static ReadSettings pick(String... columns) {
        List<ReadSettings.Pick> picks = List.of(columns).stream()
                .map(column -> new ReadSettings.Pick(column, column))
                .toList();
        return new ReadSettings(OptionalDouble.empty(), picks, Map.of());
    }

    /** Settings that scale a channel. */
    public static ReadSettings scale(String channel, double factor) {
        return new ReadSettings(OptionalDouble.empty(), List.of(), Map.of(channel, factor));
    }
}
