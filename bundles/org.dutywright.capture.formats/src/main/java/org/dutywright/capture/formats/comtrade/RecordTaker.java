// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.comtrade;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.ColumnChoice;
import org.dutywright.capture.UnreadableException;

/** Gives each record its instant and its values. */
final class RecordTaker {
    private static final long MOST_SKIPPED = 10_000_000;
    private static final double LARGEST_NUMBER = 1e15;

    private final Path file;
    private final Config config;
    private final List<ColumnChoice.Chosen> chosen;
    private final CaptureBuilder builder;
    private final boolean even;
    private final double[] row;
    private boolean started;
    private long firstNumber;
    private long lastNumber;
    private long records;
    private long skipped;
    private long missing;
    private String firstMissing = "";
    private double lastSeconds = Double.NEGATIVE_INFINITY;
    private int rate;
    private double rateStart;
    private long rateFirst = 1;

    RecordTaker(Path file, Config config, List<ColumnChoice.Chosen> chosen, CaptureBuilder builder, boolean even) {
        this.file = file;
        this.config = config;
        this.chosen = chosen;
        this.builder = builder;
        this.even = even;
        row = new double[chosen.size()];
    }

    /** Whether all samples that the configuration declares were taken. */
    boolean isComplete() {
        return config.samples() > 0 && records >= config.samples();
    }

    /**
     * Takes a record.
     *
     * @param number of the sample; a NaN if missing
     * @param stamp in counts; a NaN if missing
     * @param values of all columns as written, a NaN where missing
     * @param unit what the place counts, for messages: line or byte
     * @param at the place
     */
    void take(double number, double stamp, double[] values, String unit, long at)
            throws UnreadableException, IOException {
        records++;
        skip(number, unit, at);
        boolean complete = true;
        for (int i = 0; i < row.length; i++) {
            ColumnChoice.Chosen one = chosen.get(i);
            double value = values[one.column()];
            if (one.column() < config.analogs().size()) {
                Config.Analog analog = config.analogs().get(one.column());
                value = analog.a() * value + analog.b();
            }
            row[i] = value * one.factor();
            complete &= Double.isFinite(row[i]);
        }
        if (!complete) {
            firstMissing = missing++ == 0 ? unit + " " + at : firstMissing;
            builder.leaveOut();
        } else if (even) {
            builder.append(row);
        } else {
            appendStamped(stamp, unit, at);
        }
    }

    private void skip(double written, String unit, long at) throws UnreadableException {
        long number = Double.isNaN(written) ? lastNumber + 1 : (long) written;
        if (!started) {
            started = true;
            firstNumber = number;
            lastNumber = number - 1;
        }
        long ahead = number - lastNumber - 1;
        if (Math.abs(written) > LARGEST_NUMBER || ahead < 0 || skipped + ahead > MOST_SKIPPED) {
            throw new UnreadableException(
                    file,
                    unit + " " + at,
                    "sample number " + number + " follows " + lastNumber,
                    "export the record again");
        }
        skipped += ahead;
        for (long i = 0; i < ahead; i++) {
            builder.leaveOut();
        }
        lastNumber = number;
    }

    private void appendStamped(double stamp, String unit, long at) throws UnreadableException, IOException {
        double seconds = config.rates().isEmpty() ? stamp * config.stampSeconds() : secondsByRates();
        if (Double.isNaN(seconds) || Double.isInfinite(seconds)) {
            throw new UnreadableException(
                    file,
                    unit + " " + at,
                    "there is neither a time stamp nor a sample rate",
                    "give the sample rate with --sample-rate HZ");
        }
        if (seconds < lastSeconds) {
            throw new UnreadableException(
                    file, unit + " " + at, "time goes back from " + lastSeconds + " s to " + seconds + " s", "");
        }
        lastSeconds = seconds;
        builder.append(seconds, row);
    }

    /** The step before a sample is that of the rate at which the sample itself was taken. */
    private double secondsByRates() {
        long number = lastNumber - firstNumber + 1;
        List<Config.Rate> rates = config.rates();
        while (rate < rates.size() - 1 && number > rates.get(rate).lastSample()) {
            long last = rates.get(rate).lastSample();
            if (last > rateFirst) {
                rateStart += (last - rateFirst) / rates.get(rate).hertz();
                rateFirst = last;
            }
            rate++;
        }
        return rateStart + (number - rateFirst) / rates.get(rate).hertz();
    }

    /** To be called after the last record: says what was decided. */
    void finish(Map<String, String> guessed) {
        if (even) {
            guessed.put("time", "by the sample rate; time stamps are not used");
        } else if (config.rates().isEmpty()) {
            guessed.put("time", "by the time stamps");
            builder.stampResolution(config.stampSeconds());
        } else {
            double slowest = config.rates().stream()
                    .mapToDouble(Config.Rate::hertz)
                    .min()
                    .orElseThrow();
            guessed.put("time", "by " + config.rates().size() + " sample rates");
            builder.exactStamps(1 / slowest);
        }
        if (config.samples() > records) {
            guessed.put("length", "declared as " + config.samples() + " samples, cut off after " + records);
        }
        if (missing > 0) {
            guessed.put("records left out", missing + ", because values are missing; the first is " + firstMissing);
        }
        if (skipped > 0) {
            guessed.put("sample numbers skipped", Long.toString(skipped));
        }
    }
}
