// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.wav;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.Channel;
import org.dutywright.capture.ColumnChoice;
import org.dutywright.capture.CountScale;
import org.dutywright.capture.PlacedSamples;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;
import org.dutywright.capture.formats.internal.Decoders;
import org.dutywright.units.Unit;

/** Reads the samples of a sound file. */
final class WavData {
    private static final int BLOCK_BYTES = 1 << 18;
    private static final long ALL_ONES = 0xFFFFFFFFL;
    private static final int CHUNK_HEADER_BYTES = 8;

    private final ByteSource source;
    private final WavFormat format;
    private final ByteOrder order;
    private final List<ColumnChoice.Chosen> chosen;
    private final Map<String, String> guessed;
    private final Optional<StatedScale> stated;

    private WavData(
            ByteSource source, ByteOrder order, WavFormat format, Optional<StatedScale> comment, ReadSettings settings)
            throws UnreadableException {
        this.source = source;
        this.order = order;
        this.format = format;
        guessed = WavCaptureReader.guessed(format);
        stated = comment.filter(it -> it.channels().size() == format.channels());
        List<ColumnChoice.Column> columns = new ArrayList<>();
        for (int i = 0; i < format.channels(); i++) {
            columns.add(column(i, settings.fullScaleVolts()));
        }
        chosen = ColumnChoice.choose(source.file(), columns, settings);
        guessed.put("values", values(columns, settings));
    }

    /** Full scale as given, else as the comment says; else a share of it. */
    private ColumnChoice.Column column(int index, OptionalDouble fullScaleVolts) {
        Optional<StatedScale.FullScale> said = stated.map(it -> it.channels().get(index));
        String heading = said.map(StatedScale.FullScale::name).orElse("");
        String name = heading.isEmpty() ? "channel" + (index + 1) : heading;
        if (fullScaleVolts.isPresent()) {
            return new ColumnChoice.Column(heading, name, Unit.VOLT.symbol(), fullScaleVolts.getAsDouble());
        }
        String unit = said.map(StatedScale.FullScale::unit).orElse("");
        return new ColumnChoice.Column(
                heading, name, unit, said.map(StatedScale.FullScale::value).orElse(1.0));
    }

    private String values(List<ColumnChoice.Column> columns, ReadSettings settings) {
        if (settings.fullScaleVolts().isPresent()) {
            return "full scale is " + settings.fullScaleVolts().getAsDouble() + " V, as given";
        }
        if (stated.isPresent()) {
            return columns.stream()
                    .map(column -> column.name() + " " + column.factor() + " " + column.unit())
                    .map(String::strip)
                    .collect(Collectors.joining(", ", "full scale is, as the file's comment says, ", ""));
        }
        return "shares of full scale; --full-scale VOLTS says how many volts full scale is, of one channel --scale"
                + " NAME=VOLTS";
    }

    /**
     * Reads.
     *
     * @param stated what the comment says, if it comes before the samples
     * @param declaredBytes length of the data chunk, as declared
     */
    static Capture read(
            ByteSource source,
            ByteOrder order,
            WavFormat format,
            Optional<StatedScale> stated,
            long declaredBytes,
            ReadSettings settings,
            Progress progress)
            throws UnreadableException, IOException {
        WavData data = new WavData(source, order, format, stated, settings);
        double rate = data.sampleRateHz(settings);
        long bytes = data.length(declaredBytes);
        List<Channel> channels =
                data.chosen.stream().map(ColumnChoice.Chosen::channel).toList();
        try (CaptureBuilder builder = CaptureBuilder.even(channels, data.startSeconds(), rate)) {
            data.frames(builder, bytes);
            data.sayCounts(builder);
            return builder.finish(source.source(), data.guessed, progress);
        }
    }

    private double sampleRateHz(ReadSettings settings) throws UnreadableException {
        OptionalDouble given = settings.sampleRateHz();
        if (format.sampleRateHz() > 0) {
            if (given.isPresent()) {
                guessed.put("given sample rate", "not used, because the file says " + format.sampleRateHz() + " Hz");
            }
            return stated.map(StatedScale::sampleRateHz)
                    .filter(OptionalDouble::isPresent)
                    .map(OptionalDouble::getAsDouble)
                    .filter(exact -> Math.abs(exact - format.sampleRateHz()) <= 1)
                    .orElse((double) format.sampleRateHz());
        }
        return given.orElseThrow(() -> new UnreadableException(
                source.file(), "", "says no sample rate", "give the sample rate with --sample-rate HZ"));
    }

    private double startSeconds() {
        stated.filter(it -> it.startSeconds() != 0)
                .ifPresent(it -> guessed.put("start", it.startSeconds() + " s, as the file's comment says"));
        return stated.map(StatedScale::startSeconds).orElse(0.0);
    }

    private long length(long declaredBytes) throws IOException {
        long there = source.remainingBytes();
        if (declaredBytes == ALL_ONES || declaredBytes < 0 || (declaredBytes == 0 && !isChunk(source.peek(8)))) {
            guessed.put("length", "not declared, taken to the end of the file");
            return there;
        }
        if (declaredBytes > there) {
            guessed.put("length", "declared as " + declaredBytes + " bytes, cut off after " + there);
            return there;
        }
        return declaredBytes;
    }

    /** Whether these bytes may start another chunk, so that a data chunk of no length is one. */
    private boolean isChunk(byte[] bytes) {
        if (bytes.length < CHUNK_HEADER_BYTES) {
            return bytes.length == 0;
        }
        for (int i = 0; i < 4; i++) {
            if (bytes[i] < ' ' || bytes[i] > '~') {
                return false;
            }
        }
        long size = ByteBuffer.wrap(bytes).order(order).getInt(4) & ALL_ONES;
        return size <= source.remainingBytes() - CHUNK_HEADER_BYTES;
    }

    private void frames(CaptureBuilder builder, long bytes) throws IOException {
        int frameBytes = format.frameBytes();
        int blockFrames = Math.max(1, BLOCK_BYTES / frameBytes);
        long frames = bytes / frameBytes;
        builder.place(PlacedSamples.open(source.file(), frames, columns(source.position(), frameBytes)));
        for (long left = frames; left > 0; left -= blockFrames) {
            int here = (int) Math.min(blockFrames, left);
            // while these bytes are at hand, their frames are summed up
            source.skip((long) here * frameBytes);
            builder.takePlaced(here);
        }
        if (builder.leftOutCount() > 0) {
            guessed.put("samples left out", builder.leftOutCount() + ", because they hold no number");
        }
    }

    private List<PlacedSamples.Column> columns(long start, int frameBytes) {
        int bytes = format.sampleBytes();
        List<PlacedSamples.Column> columns = new ArrayList<>();
        for (ColumnChoice.Chosen one : chosen) {
            long first = start + (long) one.column() * bytes;
            columns.add(new PlacedSamples.Column(first, frameBytes, bytes, order, decoder(one.factor())));
        }
        return columns;
    }

    private PlacedSamples.Decoder decoder(double factor) {
        SampleCoding coding = format.coding();
        int bytes = format.sampleBytes();
        if (coding == SampleCoding.PCM && bytes == Short.BYTES) {
            return Decoders.shorts(Math.scalb(factor, 1 - Short.SIZE));
        }
        return coding == SampleCoding.FLOAT && bytes == Float.BYTES
                ? Decoders.floats(factor)
                : Decoders.of((buffer, place) -> coding.value(buffer, place, bytes), factor);
    }

    private void sayCounts(CaptureBuilder builder) {
        if (format.coding() != SampleCoding.PCM || format.sampleBytes() > 2) {
            return;
        }
        double count = Math.scalb(1.0, 1 - 8 * format.sampleBytes());
        for (int i = 0; i < chosen.size(); i++) {
            double scale = count * chosen.get(i).factor();
            if (Double.isFinite(scale) && scale != 0) {
                builder.counts(i, new CountScale(scale, 0));
            }
        }
    }
}
