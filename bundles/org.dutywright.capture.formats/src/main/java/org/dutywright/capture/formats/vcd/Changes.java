// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.vcd;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.io.IOException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.UnreadableException;

/** Reads the changes of a dump and makes two rows of each instant. */
final class Changes {
    private static final int NOT_CHOSEN = -1;

    private final Tokens tokens;
    private final Header header;
    private final CaptureBuilder builder;
    private final Map<String, Integer> rows = new HashMap<>();
    private final int[] byShortCode = new int[128];
    private final double[] factors;
    private final double[] before;
    private final double[] now;
    private final boolean[] known;
    private long ticks = -1;
    private long lastRowTicks = -1;
    private boolean changed;
    private boolean started;
    private boolean broken;
    private long unknownSpans;

    /**
     * Prepares.
     *
     * @param signals index of each channel's signal
     * @param factors of the channels
     */
    Changes(Tokens tokens, Header header, int[] signals, double[] factors, CaptureBuilder builder) {
        this.tokens = tokens;
        this.header = header;
        this.builder = builder;
        this.factors = factors.clone();
        before = new double[signals.length];
        now = new double[signals.length];
        known = new boolean[signals.length];
        Arrays.fill(now, Double.NaN);
        Arrays.fill(byShortCode, NOT_CHOSEN);
        for (int i = 0; i < signals.length; i++) {
            String code = header.signals().get(signals[i]).code();
            rows.put(code, i);
            if (code.length() == 1 && code.charAt(0) < byShortCode.length) {
                byShortCode[code.charAt(0)] = i;
            }
        }
    }

    void read() throws UnreadableException, IOException {
        while (tokens.next()) {
            byte first = tokens.at(0);
            switch (first) {
                case '#' -> time();
                case '$' -> keyword();
                case 'b', 'B' -> {
                    double value = bits();
                    vector(value);
                }
                case 'r', 'R' -> {
                    double value = real();
                    vector(value);
                }
                case '0', '1', 'x', 'X', 'z', 'Z' -> scalar(first);
                default -> throw tokens.broken("'" + Header.quote(tokens.text()) + "' is no change of a value");
            }
        }
        flush();
        end();
    }

    private void keyword() throws UnreadableException, IOException {
        if (tokens.is("$comment")) {
            tokens.skipToEnd("$comment");
            return;
        }
        boolean known = tokens.is("$end")
                || tokens.is("$dumpvars")
                || tokens.is("$dumpall")
                || tokens.is("$dumpon")
                || tokens.is("$dumpoff");
        if (!known) {
            throw tokens.broken("'" + Header.quote(tokens.text()) + "' is not known among the changes");
        }
    }

    private void time() throws UnreadableException, IOException {
        long next = tokens.time();
        if (next < 0) {
            throw tokens.broken("'" + Header.quote(tokens.text()) + "' is no instant");
        }
        if (next < ticks) {
            throw tokens.broken("time goes back from " + ticks + " to " + next);
        }
        if (next > ticks) {
            flush();
            ticks = next;
        }
    }

    private void scalar(byte value) throws UnreadableException {
        int row = tokens.length() == 2 && tokens.at(1) >= 0
                ? byShortCode[tokens.at(1)]
                : rows.getOrDefault(tokens.text(1), NOT_CHOSEN);
        if (tokens.length() == 1) {
            throw tokens.broken("a change names no signal");
        }
        set(row, value == '0' ? 0 : value == '1' ? 1 : Double.NaN);
    }

    private double bits() throws UnreadableException {
        double value = tokens.length() > 1 ? 0 : Double.NaN;
        for (int i = 1; i < tokens.length(); i++) {
            value = switch (tokens.at(i)) {
                case '0', '1' -> 2 * value + (tokens.at(i) - '0');
                case 'x', 'X', 'z', 'Z' -> Double.NaN;
                default -> throw tokens.broken("'" + Header.quote(tokens.text()) + "' is no binary number");
            };
        }
        return value;
    }

    private double real() throws UnreadableException {
        String text = tokens.text(1);
        try {
            return JavaDoubleParser.parseDouble(text);
        } catch (NumberFormatException e) {
            throw tokens.broken("'" + Header.quote(text) + "' is no number");
        }
    }

    private void vector(double value) throws UnreadableException, IOException {
        set(rows.getOrDefault(tokens.word("a change"), NOT_CHOSEN), value);
    }

    private void set(int row, double value) {
        // changes before the first instant belong to it
        if (row != NOT_CHOSEN) {
            now[row] = value * factors[row];
            known[row] |= Double.isFinite(now[row]);
            changed = true;
        }
    }

    /** Makes rows of what changed at the instant that ends now. */
    private void flush() throws IOException {
        if (!changed || ticks < 0) {
            return;
        }
        changed = false;
        boolean complete = Arrays.stream(now).allMatch(Double::isFinite);
        if (started && !broken && Arrays.equals(before, now)) {
            return;
        }
        if (started && !broken) {
            append(before);
        }
        if (complete) {
            append(now);
            System.arraycopy(now, 0, before, 0, now.length);
            started = true;
            broken = false;
        } else if (started && !broken) {
            builder.leaveOut();
            broken = true;
            unknownSpans++;
        }
    }

    /** The last value runs to the last instant. */
    private void end() throws IOException {
        if (started && !broken && ticks > lastRowTicks) {
            append(before);
        }
    }

    private void append(double[] row) throws IOException {
        builder.append(header.seconds(ticks), row);
        lastRowTicks = ticks;
    }

    /** Number of spans, after the first row, in which a channel had no value. */
    long unknownSpans() {
        return unknownSpans;
    }

    /** Whether a channel had a value at any time. */
    boolean wasKnown(int channel) {
        return known[channel];
    }
}
