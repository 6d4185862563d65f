// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Channel;
import org.dutywright.capture.Progress;
import org.dutywright.capture.Samples;

/**
 * Writes a capture as one Arrow IPC file, as the package description says. {@link ArrowCaptureReader} reads it back:
 * the same channels, units, instants and gaps, and the same values but for the rounding to single precision where the
 * steps of the values allow that. Memory does not grow with the length of the capture.
 */
public final class CaptureStore {
    /** Number of samples in a batch; the last one may be shorter. */
    public static final int BATCH_SAMPLES = 1 << 20;

    private static final int BLOCK = 1 << 15;

    private final Capture capture;
    private final Progress progress;
    private final double[] block = new double[BLOCK];
    private final ByteBuffer bytes = ByteBuffer.allocate(BLOCK * Double.BYTES).order(ByteOrder.LITTLE_ENDIAN);

    private CaptureStore(Capture capture, Progress progress) {
        this.capture = capture;
        this.progress = progress;
    }

    /**
     * Writes it and leaves the stream open.
     *
     * @param settings what the user said about the source, by name, for the metadata
     * @param stream gets the file
     * @param progress gets one task, each value twice
     */
    public static void write(Capture capture, Map<String, String> settings, OutputStream stream, Progress progress)
            throws IOException {
        new CaptureStore(capture, progress).write(settings, stream);
    }

    private void write(Map<String, String> settings, OutputStream stream) throws IOException {
        Samples samples = capture.samples();
        int channels = capture.channels().size();
        progress.begin("writing the store", 2L * channels * capture.sampleCount());
        List<ColumnForm> forms = new ArrayList<>();
        List<ArrowField> fields = new ArrayList<>();
        boolean stamped = capture.timeBase().sampleRateHz().isEmpty();
        if (stamped) {
            fields.add(new ArrowField(
                    StoreMetadata.TIME_COLUMN, ArrowField.Type.FLOAT64, Map.of(StoreMetadata.UNIT, "s")));
        }
        for (int i = 0; i < channels; i++) {
            ColumnForm form = FormFinder.find(samples, i, progress);
            forms.add(form);
            fields.add(field(capture.channels().get(i), form));
        }
        ArrowFileWriter writer = ArrowFileWriter.begin(stream, fields, StoreMetadata.of(capture, settings));
        for (long first = 0; first < samples.sampleCount(); first += BATCH_SAMPLES) {
            long start = first;
            int rows = (int) Math.min(BATCH_SAMPLES, samples.sampleCount() - first);
            List<ArrowFileWriter.Buffer> buffers = new ArrayList<>();
            if (stamped) {
                buffers.add(
                        new ArrowFileWriter.Buffer((long) rows * Double.BYTES, out -> writeStamps(start, rows, out)));
            }
            for (int i = 0; i < channels; i++) {
                int channel = i;
                ColumnForm form = forms.get(i);
                buffers.add(new ArrowFileWriter.Buffer(
                        (long) rows * form.bytes(), out -> writeValues(channel, form, start, rows, out)));
            }
            writer.batch(rows, buffers);
        }
        writer.finish();
    }

    private static ArrowField field(Channel channel, ColumnForm form) {
        Map<String, String> metadata = new LinkedHashMap<>();
        metadata.put(StoreMetadata.UNIT, channel.unit());
        if (form.counts().isEmpty()) {
            return new ArrowField(channel.name(), form.type(), metadata);
        }
        metadata.put(StoreMetadata.CHANNEL, channel.name());
        metadata.put(StoreMetadata.SCALE, Double.toString(form.counts().get().scale()));
        metadata.put(StoreMetadata.OFFSET, Double.toString(form.counts().get().offset()));
        return new ArrowField(channel.name() + StoreMetadata.COUNTS_ENDING, form.type(), metadata);
    }

    private void writeStamps(long first, int rows, OutputStream out) throws IOException {
        for (int done = 0; done < rows; done += BLOCK) {
            progress.checkCancelled();
            int count = Math.min(BLOCK, rows - done);
            capture.timeBase().readSeconds(first + done, block, 0, count);
            send(ColumnForm.of(ArrowField.Type.FLOAT64), count, out);
        }
    }

    private void writeValues(int channel, ColumnForm form, long first, int rows, OutputStream out) throws IOException {
        for (int done = 0; done < rows; done += BLOCK) {
            progress.checkCancelled();
            int count = Math.min(BLOCK, rows - done);
            capture.samples().read(channel, first + done, block, 0, count);
            send(form, count, out);
            progress.worked(count);
        }
    }

    private void send(ColumnForm form, int count, OutputStream out) throws IOException {
        bytes.clear();
        for (int i = 0; i < count; i++) {
            switch (form.type()) {
                case INT16 -> bytes.putShort((short) form.counts().orElseThrow().countOf(block[i]));
                case FLOAT32 -> bytes.putFloat((float) block[i]);
                default -> bytes.putDouble(block[i]);
            }
        }
        out.write(bytes.array(), 0, bytes.position());
    }
}
