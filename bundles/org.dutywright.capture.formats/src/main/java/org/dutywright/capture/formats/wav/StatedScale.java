// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.wav;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the comment of a sound file says of its samples, in the words that {@code convert} writes: a line for each channel,
 * {@code signal1: full scale 12.6 V}, then {@code start: -0.01 s} and {@code sample rate: 44100.5 Hz} where they are not 0
 * and a whole number. Another comment says nothing.
 *
 * @param channels in order
 * @param startSeconds instant of the first sample
 * @param sampleRateHz the rate where the format chunk holds a rounded one
 */
record StatedScale(List<FullScale> channels, double startSeconds, OptionalDouble sampleRateHz) {
    private static final String NUMBER = "([-+]?\\d+(?:\\.\\d+)?(?:[eE][-+]?\\d+)?)";
    private static final Pattern CHANNEL = Pattern.compile("(.+): full scale " + NUMBER + "(?: (\\S+))?");
    private static final Pattern START = Pattern.compile("start: " + NUMBER + " s");
    private static final Pattern RATE = Pattern.compile("sample rate: " + NUMBER + " Hz");

    /**
     * A channel.
     *
     * @param name of the channel
     * @param value what full scale stands for
     * @param unit its unit, may be empty
     */
    record FullScale(String name, double value, String unit) {}

    /** Copies its list. */
    StatedScale {
        channels = List.copyOf(channels);
    }

    /** Reads the chunks of a list of information; empty if it holds no such comment. */
    static Optional<StatedScale> ofInfo(byte[] list, boolean bigEndian) {
        if (list.length < 4 || !ascii(list, 0).equals("INFO")) {
            return Optional.empty();
        }
        for (int at = 4; at + 8 <= list.length; ) {
            long size = size(list, at + 4, bigEndian);
            if (size > list.length - at - 8) {
                return Optional.empty();
            }
            if (ascii(list, at).equals("ICMT")) {
                String text = new String(list, at + 8, (int) size, StandardCharsets.UTF_8);
                return of(text.replace("\0", ""));
            }
            at += 8 + (int) (size + size % 2);
        }
        return Optional.empty();
    }

    private static Optional<StatedScale> of(String comment) {
        List<FullScale> channels = new ArrayList<>();
        double start = 0;
        OptionalDouble rate = OptionalDouble.empty();
        for (String line : comment.strip().split("\n", -1)) {
            Matcher channel = CHANNEL.matcher(line);
            Matcher started = START.matcher(line);
            Matcher rated = RATE.matcher(line);
            if (channel.matches()) {
                double value = Double.parseDouble(channel.group(2));
                if (!(value > 0) || Double.isInfinite(value)) {
                    return Optional.empty();
                }
                channels.add(new FullScale(channel.group(1), value, channel.group(3) == null ? "" : channel.group(3)));
            } else if (started.matches()) {
                start = Double.parseDouble(started.group(1));
            } else if (rated.matches()) {
                rate = OptionalDouble.of(Double.parseDouble(rated.group(1)));
            } else {
                return Optional.empty();
            }
        }
        return channels.isEmpty() || !Double.isFinite(start)
                ? Optional.empty()
                : Optional.of(new StatedScale(channels, start, rate));
    }

    private static String ascii(byte[] bytes, int at) {
        return new String(bytes, at, 4, StandardCharsets.ISO_8859_1);
    }

    private static long size(byte[] bytes, int at, boolean bigEndian) {
        long size = 0;
        for (int i = 0; i < 4; i++) {
            size = size << 8 | (bytes[at + (bigEndian ? i : 3 - i)] & 0xFF);
        }
        return size;
    }
}
