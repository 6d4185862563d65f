// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** A text table of a time column and two channels. */
final class TextTable {
    private static final double SAMPLE_RATE_HZ = 1e6;

    private TextTable() {}

    /** Writes one. */
    static void write(int rows, OutputStream stream) throws IOException {
        Signal first = new Signal(SAMPLE_RATE_HZ);
        stream.write("time (s),signal1 (V),signal2 (V)\n".getBytes(StandardCharsets.US_ASCII));
        for (int row = 0; row < rows; row++) {
            double volts = first.next() * Signal.VOLTS_A_COUNT;
            // by hand: the formatter of the library would take minutes
            String line = decimal(row, 6) + "," + decimal(Math.round(volts * 1e5), 5) + ","
                    + decimal(Math.round((5 - volts) * 1e5), 5) + "\n";
            stream.write(line.getBytes(StandardCharsets.US_ASCII));
        }
    }

    private static String decimal(long units, int digits) {
        String text = Long.toString(Math.abs(units));
        String padded = "0".repeat(Math.max(0, digits + 1 - text.length())) + text;
        int point = padded.length() - digits;
        return (units < 0 ? "-" : "") + padded.substring(0, point) + "." + padded.substring(point);
    }
}
