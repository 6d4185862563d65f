// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.UnreadableException;

/**
 * Turns the cells of the time column into instants. Where time starts anew, as it does in each part of a recording in
 * segments, the part is put behind the one before with a gap between them: how long they lie apart is not in the file.
 */
final class StampCells {
    private static final double GAP_STEPS = 3;
    /** Of a part; what goes back sooner is no part of a recording. */
    private static final long FEWEST_ROWS = 5;

    private final Path file;
    private final int column;
    private final double factor;
    private final NumberCell number;
    private final Optional<ClockCell> clock;
    private final StampDigits digits = new StampDigits();
    private double largest;
    private double first = Double.NaN;
    private double last = Double.NEGATIVE_INFINITY;
    private double shiftSeconds;
    private long rows;
    private long restarts;
    private long firstRestartLine;

    StampCells(Path file, TimeColumn time, NumberCell number) {
        this.file = file;
        this.number = number;
        column = time.column();
        factor = time.factor();
        clock = time.clock() ? Optional.of(new ClockCell()) : Optional.empty();
    }

    int column() {
        return column;
    }

    boolean isClock() {
        return clock.isPresent();
    }

    /**
     * The stamp of a row as it is written.
     *
     * @return NaN if there is none
     * @throws NumberFormatException if the cell holds anything else
     */
    double read(Row row) {
        return clock.isPresent()
                ? clock.get().parse(row.bytes, row.starts[column], row.ends[column])
                : number.parse(row.bytes, row.starts[column], row.ends[column]);
    }

    /**
     * The instant that a row is taken at.
     *
     * @param stamp of the row, from {@link #read}
     * @throws UnreadableException if time goes back, but not to its start
     */
    double take(Row row, double stamp) throws UnreadableException {
        if (stamp < last) {
            restart(row, stamp);
        }
        if (clock.isEmpty()) {
            digits.add(row.bytes, row.starts[column], row.ends[column]);
        }
        count(stamp, stamp, 1);
        return shifted(stamp * factor);
    }

    /** Takes rows that follow on those before; their instants are put behind the parts before. */
    void take(CleanRows clean) {
        digits.add(clean.digits());
        count(clean.firstStamp(), clean.lastStamp(), clean.count());
        double[] seconds = clean.seconds();
        for (int i = 0; restarts > 0 && i < clean.count(); i++) {
            seconds[i] = shifted(seconds[i]);
        }
    }

    private void count(double from, double to, int added) {
        largest = Math.max(largest, Math.max(Math.abs(from), Math.abs(to)));
        first = rows == 0 ? from : first;
        last = to;
        rows += added;
    }

    private double shifted(double seconds) {
        return restarts == 0 ? seconds : seconds + shiftSeconds;
    }

    /** The last stamp, as it is written. */
    double last() {
        return last;
    }

    private void restart(Row row, double stamp) throws UnreadableException {
        double meanStep = (last - first) / (rows - 1);
        boolean toStart = rows >= FEWEST_ROWS && stamp < first + meanStep / 2;
        if (!toStart || clock.isPresent()) {
            throw new UnreadableException(
                    file,
                    row.position(column),
                    "time goes back from " + last + " to " + stamp,
                    "split the recording where its time starts anew");
        }
        firstRestartLine = restarts == 0 ? row.line : firstRestartLine;
        restarts++;
        shiftSeconds += (last + GAP_STEPS * meanStep - stamp) * factor;
        rows = 0;
    }

    /** To be called after the last row: says how finely time was printed, and where it started anew. */
    void finish(CaptureBuilder builder, Map<String, String> guessed) {
        double resolution = clock.map(ClockCell::resolution).orElseGet(() -> digits.resolution(largest));
        builder.stampResolution(resolution * factor);
        if (restarts > 0) {
            guessed.put(
                    "time starts anew",
                    restarts + " times, first in line " + firstRestartLine
                            + "; the parts follow one another, how far apart they lie is not in the file");
        }
    }
}
