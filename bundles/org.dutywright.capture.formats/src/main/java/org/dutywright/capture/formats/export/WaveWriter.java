// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.export;

import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Channel;
import org.dutywright.capture.CountScale;
import org.dutywright.capture.Progress;
import org.dutywright.capture.TimeBase;
import org.dutywright.capture.UnreadableException;

/**
 * Writes 16-bit PCM. Each channel has a full scale of its own: that of its counts if the source holds counts around 0,
 * else the largest magnitude of its values, rounded up to three digits.
 */
final class WaveWriter implements CaptureWriter {
    private static final int CODES = 32_768;
    private static final int SCALE_DIGITS = 3;
    private static final int MOST_CHANNELS = 1000;
    private static final long MOST_RATE = 0xFFFF_FFFFL;
    /** Beyond it, a rate in whole hertz would be worse than the clock of a usual instrument. */
    private static final double MOST_PPM = 50;

    @Override
    public String ending() {
        return ".wav";
    }

    @Override
    public Prepared prepare(Capture capture, Map<String, String> settings, Progress progress)
            throws UnreadableException, IOException {
        Path file = capture.sources().isEmpty()
                ? Path.of("capture")
                : capture.sources().get(0).path();
        double rate = rate(file, capture.timeBase());
        if (capture.channels().size() > MOST_CHANNELS) {
            throw refused(file, "it has more than " + MOST_CHANNELS + " channels");
        }
        double[] fullScales = fullScales(capture, progress);
        List<String> comment = new ArrayList<>();
        for (int i = 0; i < fullScales.length; i++) {
            Channel channel = capture.channels().get(i);
            comment.add((channel.name() + ": full scale " + fullScales[i] + " " + channel.unit()).strip());
        }
        List<String> remarks = new ArrayList<>();
        remarks.add("16 bits a sample; " + String.join(", ", comment));
        long whole = Math.round(rate);
        if (whole != rate) {
            comment.add("sample rate: " + rate + " Hz");
            remarks.add("the sample rate of " + rate + " Hz became " + whole + " Hz; the comment says it whole");
        }
        double start = capture.sampleCount() == 0 ? 0 : capture.timeBase().secondsAt(0);
        if (start != 0) {
            comment.add("start: " + start + " s");
            remarks.add("the first sample lies at " + start + " s, which only the comment says");
        }
        byte[] header =
                WaveHeader.of(capture.channels().size(), whole, capture.sampleCount(), String.join("\n", comment));
        return new Prepared(
                stream -> {
                    stream.write(header);
                    write(capture, fullScales, stream, progress);
                },
                remarks);
    }

    private static double rate(Path file, TimeBase base) throws UnreadableException {
        if (base.sampleRateHz().isEmpty()) {
            throw refused(file, "its samples are not evenly spaced");
        }
        if (base.segments().size() > 1) {
            throw refused(
                    file,
                    "it has gaps, the first after " + base.segments().get(0).sampleCount() + " samples");
        }
        double rate = base.sampleRateHz().getAsDouble();
        double ppm = 1e6 * Math.abs(Math.round(rate) - rate) / rate;
        if (ppm > MOST_PPM || rate > MOST_RATE) {
            throw refused(file, "its sample rate of " + rate + " Hz is no whole number up to " + MOST_RATE);
        }
        return rate;
    }

    private static UnreadableException refused(Path file, String why) {
        return UnreadableException.lacks(
                file, "a WAV file cannot hold this recording: " + why, "write .arrow or .csv, or a part of it");
    }

    private static double[] fullScales(Capture capture, Progress progress) throws IOException {
        double[] largest = new double[capture.channels().size()];
        RowBlocks rows = RowBlocks.of(capture, "looking for the largest values", progress);
        while (rows.next()) {
            for (int channel = 0; channel < largest.length; channel++) {
                double[] values = rows.values()[channel];
                double most = largest[channel];
                for (int i = 0; i < rows.count(); i++) {
                    most = Math.max(most, Math.abs(values[i]));
                }
                largest[channel] = most;
            }
        }
        double[] scales = new double[largest.length];
        for (int channel = 0; channel < scales.length; channel++) {
            scales[channel] = fullScale(capture.samples().counts(channel), largest[channel]);
        }
        return scales;
    }

    private static double fullScale(Optional<CountScale> counts, double largest) {
        double ofCounts = counts.filter(scale -> scale.offset() == 0 && scale.scale() > 0)
                .map(scale -> scale.scale() * CODES)
                .orElse(0.0);
        if (ofCounts >= largest && ofCounts > 0) {
            return ofCounts;
        }
        double needed = largest * CODES / (CODES - 1);
        return needed == 0
                ? 1
                : new BigDecimal(needed)
                        .round(new MathContext(SCALE_DIGITS, RoundingMode.UP))
                        .doubleValue();
    }

    private static void write(Capture capture, double[] fullScales, OutputStream stream, Progress progress)
            throws IOException {
        RowBlocks rows = RowBlocks.of(capture, "writing samples", progress);
        ByteBuffer row = ByteBuffer.allocate(fullScales.length * Short.BYTES).order(ByteOrder.LITTLE_ENDIAN);
        while (rows.next()) {
            for (int i = 0; i < rows.count(); i++) {
                row.clear();
                for (int channel = 0; channel < fullScales.length; channel++) {
                    double code = Math.rint(rows.values()[channel][i] / fullScales[channel] * CODES);
                    row.putShort((short) Math.clamp(code, Short.MIN_VALUE, Short.MAX_VALUE));
                }
                stream.write(row.array());
            }
        }
    }
}
