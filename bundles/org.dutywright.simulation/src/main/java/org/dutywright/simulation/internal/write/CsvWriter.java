// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.write;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.dutywright.capture.Channel;
import org.dutywright.capture.Progress;
import org.dutywright.capture.Segment;
import org.dutywright.simulation.Recording;
import org.dutywright.simulation.Scenario;
import org.dutywright.simulation.internal.signal.SimulatedSamples;

/** Writes samples as comma-separated text (RFC 4180 but with LF line ends): heading with units, then one line each. */
public final class CsvWriter {

    private static final int BLOCK_ROWS = 4096;

    /** The printed value may be off by at most half a hundredth of a step: codes stay apart evenly. */
    private static final double STEPS_PER_DIGIT = 100;

    private static final int DECIMALS_WITHOUT_STEP = 6;

    private final SimulatedSamples samples;
    private final Recording recording;
    private final OutputStream stream;
    private final TimeStamps stamps;
    private final int decimals;
    private final double scale;
    private final double[][] columns;
    private final byte[] lines;

    private CsvWriter(Scenario scenario, SimulatedSamples samples, OutputStream stream) {
        this.samples = samples;
        this.recording = scenario.recording();
        this.stream = stream;
        this.stamps = TimeStamps.of(recording);
        double unitsPerVolt = recording.format().valueUnit().equals("mV") ? 1e3 : 1;
        this.decimals = recording.format().decimals().orElse(decimalsNeeded(unitsPerVolt));
        this.scale = unitsPerVolt * Math.pow(10, decimals);
        this.columns = new double[samples.channelCount()][BLOCK_ROWS];
        this.lines = new byte[BLOCK_ROWS * (columns.length + 1) * (FixedPoint.MAX_BYTES + 1)];
    }

    /**
     * Writes all samples.
     *
     * @param progress gets one task in samples of a channel
     */
    public static void write(Scenario scenario, SimulatedSamples samples, OutputStream stream, Progress progress)
            throws IOException {
        CsvWriter writer = new CsvWriter(scenario, samples, stream);
        progress.begin("simulating " + scenario.id(), samples.sampleCount());
        writer.writeHeading();
        for (Segment segment : samples.segments()) {
            writer.writeSegment(segment, progress);
        }
    }

    private int decimalsNeeded(double unitsPerVolt) {
        double digit = recording
                .quantisation()
                .map(steps -> steps.stepVolts() / STEPS_PER_DIGIT)
                .orElse(Math.pow(10, -DECIMALS_WITHOUT_STEP));
        // A hair of slack: a step of 1 mV needs 5 decimals, not 6 because its logarithm was rounded.
        return Math.max(0, (int) Math.ceil(-Math.log10(digit * unitsPerVolt) - 1e-9));
    }

    private void writeHeading() throws IOException {
        List<String> headings = new ArrayList<>();
        if (recording.format().timeColumn()) {
            headings.add("time (" + recording.format().timeUnit() + ")");
        }
        for (Channel channel : samples.channels()) {
            headings.add(channel.name() + " (" + recording.format().valueUnit() + ")");
        }
        stream.write((String.join(",", headings) + "\n").getBytes(StandardCharsets.UTF_8));
    }

    private void writeSegment(Segment segment, Progress progress) throws IOException {
        long firstInstant = recording.instantOf(segment);
        long row = 0;
        while (row < segment.sampleCount()) {
            progress.checkCancelled();
            int count = (int) Math.min(BLOCK_ROWS, segment.sampleCount() - row);
            for (int c = 0; c < columns.length; c++) {
                samples.read(c, segment.firstSample() + row, columns[c], 0, count);
            }
            stream.write(lines, 0, printLines(firstInstant + row, count));
            row += count;
            progress.worked(count);
        }
    }

    private int printLines(long firstInstant, int count) {
        int position = 0;
        for (int i = 0; i < count; i++) {
            if (recording.format().timeColumn()) {
                position = FixedPoint.print(stamps.scaled(firstInstant + i), stamps.decimals(), lines, position);
                lines[position++] = ',';
            }
            for (double[] column : columns) {
                position = FixedPoint.print(Math.round(column[i] * scale), decimals, lines, position);
                lines[position++] = ',';
            }
            lines[position - 1] = '\n';
        }
        return position;
    }
}
