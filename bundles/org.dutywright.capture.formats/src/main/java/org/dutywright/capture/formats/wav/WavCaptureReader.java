// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.wav;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;

/** Reads captures from sound files; what it takes is said in the package description. */
@ServiceProvider(CaptureReader.class)
public final class WavCaptureReader implements CaptureReader {
    private static final int CERTAIN = 100;
    private static final int HEADER_BYTES = 12;
    private static final long ALL_ONES = 0xFFFFFFFFL;
    private static final int DS64_BYTES = 16;
    private static final int MOST_LIST_BYTES = 1 << 18;

    /** Makes the reader. */
    public WavCaptureReader() {}

    @Override
    public String id() {
        return "wav";
    }

    @Override
    public String title() {
        return "sound file (WAV)";
    }

    @Override
    public int likelihood(byte[] head) {
        return isWave(head) ? CERTAIN : 0;
    }

    private static boolean isWave(byte[] head) {
        if (head.length < HEADER_BYTES) {
            return false;
        }
        boolean known = switch (ascii(head, 0)) {
            case "RIFF", "RIFX", "RF64", "BW64" -> true;
            default -> false;
        };
        return known && ascii(head, 8).equals("WAVE");
    }

    private static String ascii(byte[] bytes, int at) {
        return new String(bytes, at, 4, StandardCharsets.ISO_8859_1);
    }

    @Override
    public Set<ReadSettings.Part> takes() {
        return Set.of(ReadSettings.Part.FULL_SCALE);
    }

    @Override
    public Capture read(Path file, ReadSettings settings, Progress progress) throws UnreadableException, IOException {
        try (ByteSource source = ByteSource.open(file, progress)) {
            byte[] header = source.require(HEADER_BYTES, "the header of a sound file");
            if (!isWave(header)) {
                throw source.unreadable(0, "is no sound file", "export the recording as WAV or CSV");
            }
            ByteOrder order = ascii(header, 0).equals("RIFX") ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
            return chunks(source, order, settings, progress);
        }
    }

    private static Capture chunks(ByteSource source, ByteOrder order, ReadSettings settings, Progress progress)
            throws UnreadableException, IOException {
        Optional<WavFormat> format = Optional.empty();
        Optional<StatedScale> stated = Optional.empty();
        long longDataBytes = ALL_ONES;
        while (true) {
            long start = source.position();
            byte[] header = source.require(8, "the chunks before the samples");
            long size = ByteBuffer.wrap(header).order(order).getInt(4) & ALL_ONES;
            String id = ascii(header, 0);
            if (id.equals("data")) {
                WavFormat found = format.orElseThrow(() -> source.unreadable(
                        start, "the samples come before the format chunk", "export the recording again"));
                boolean isLong = size == ALL_ONES && longDataBytes != ALL_ONES;
                long bytes = isLong ? longDataBytes : size;
                return WavData.read(source, order, found, stated, bytes, settings, progress);
            } else if (id.equals("fmt ")) {
                format = Optional.of(WavFormat.read(source, order, size));
            } else if (id.equals("LIST") && size <= MOST_LIST_BYTES && stated.isEmpty()) {
                byte[] list = source.require((int) size, "the list of information");
                stated = StatedScale.ofInfo(list, order == ByteOrder.BIG_ENDIAN);
            } else if (id.equals("ds64") && size >= DS64_BYTES) {
                longDataBytes = ByteBuffer.wrap(source.require(DS64_BYTES, "the ds64 chunk"))
                        .order(order)
                        .getLong(8);
                source.skip(size - DS64_BYTES);
            } else {
                source.skip(size);
            }
            source.skip(size % 2);
        }
    }

    /** What is said about the file, before the samples. */
    static Map<String, String> guessed(WavFormat format) {
        Map<String, String> guessed = new LinkedHashMap<>();
        guessed.put("coding", format.coding().word() + ", " + format.bits() + " bits");
        format.remark().ifPresent(remark -> guessed.put("format chunk", remark));
        return guessed;
    }
}
