// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.comtrade;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dutywright.capture.UnreadableException;

/** Reads the text of a configuration, line by line. */
final class ConfigParser {
    private static final Pattern COUNTS = Pattern.compile(
            "\\s*\\d{1,9}\\s*,\\s*(\\d{1,9})\\s*A\\s*,\\s*(\\d{1,9})\\s*D\\s*", Pattern.CASE_INSENSITIVE);
    private static final Pattern CLOCK = Pattern.compile("(\\d{1,2}):(\\d{1,2}):(\\d{1,2}(?:\\.(\\d*))?)");
    private static final int MOST_CHANNELS = 10_000;
    private static final int MOST_RATES = 999;
    private static final int MICROSECOND_DIGITS = 6;
    private static final String ADVICE = "export the record again, or as CSV";

    private final Path file;
    private final List<String> lines;
    private final int firstLine;
    private int next;
    private boolean nanoseconds;

    private ConfigParser(Path file, List<String> lines, int firstLine) {
        this.file = file;
        this.lines = lines;
        this.firstLine = firstLine;
    }

    /** Whether a text starts as a configuration does: its second line counts the channels. */
    static boolean isConfig(List<String> lines) {
        return lines.size() > 1 && COUNTS.matcher(lines.get(1)).matches();
    }

    /**
     * Parses.
     *
     * @param lines of the configuration
     * @param firstLine number of the first one in its file
     */
    static Config parse(Path file, List<String> lines, int firstLine) throws UnreadableException {
        return new ConfigParser(file, lines, firstLine).parse();
    }

    private Config parse() throws UnreadableException {
        String[] station = fields(1);
        int revision = station.length < 3 ? 1991 : revision(station[2]);
        Matcher counts = COUNTS.matcher(line());
        if (!counts.matches()) {
            throw broken("should count the channels, as '3,2A,1D'");
        }
        int analogCount = Integer.parseInt(counts.group(1));
        int digitalCount = Integer.parseInt(counts.group(2));
        if (analogCount + digitalCount == 0 || (long) analogCount + digitalCount > MOST_CHANNELS) {
            throw broken("declares " + ((long) analogCount + digitalCount) + " channels");
        }
        List<Config.Analog> analogs = new ArrayList<>();
        for (int i = 0; i < analogCount; i++) {
            analogs.add(analog());
        }
        List<String> digitals = new ArrayList<>();
        for (int i = 0; i < digitalCount; i++) {
            digitals.add(fields(2)[1]);
        }
        line(); // frequency of the mains
        List<Config.Rate> rates = new ArrayList<>();
        long samples = rates(rates);
        OptionalDouble trigger = trigger();
        String word = line().strip();
        DataFormat format = DataFormat.of(word)
                .orElseThrow(() -> broken("says '" + LineSource.quote(word) + "' where the kind of data should stand"));
        double multiple = next < lines.size() && !lines.get(next).isBlank() ? number(line()) : 1;
        if (!(multiple > 0)) {
            throw broken("has a factor of time stamps that is not above 0");
        }
        double stamp = multiple / (nanoseconds ? 1e9 : 1e6);
        return new Config(revision, analogs, digitals, rates, samples, format, stamp, trigger);
    }

    private static int revision(String text) {
        return text.matches("\\d{4}") ? Integer.parseInt(text) : 1991;
    }

    private Config.Analog analog() throws UnreadableException {
        String[] fields = fields(7);
        double skew = fields.length > 7 && !fields[7].isEmpty() ? number(fields[7]) : 0;
        String side = fields.length > 12 ? fields[12].toUpperCase(Locale.ROOT) : "";
        return new Config.Analog(fields[1], fields[4], number(fields[5]), number(fields[6]), skew, side);
    }

    /** Returns the number of the last sample. */
    private long rates(List<Config.Rate> rates) throws UnreadableException {
        long count = wholeNumber(line());
        if (count > MOST_RATES) {
            throw broken("declares " + count + " sample rates");
        }
        long last = 0;
        boolean none = count == 0;
        for (int i = 0; i < Math.max(1, count); i++) {
            String[] fields = fields(2);
            double hertz = number(fields[0]);
            long end = wholeNumber(fields[1]);
            if (hertz < 0 || end < last) {
                throw broken("is no sample rate and number of its last sample");
            }
            none |= hertz == 0;
            rates.add(new Config.Rate(hertz, end));
            last = end;
        }
        if (none) {
            rates.clear();
        }
        return last;
    }

    private OptionalDouble trigger() throws UnreadableException {
        String[] start = fields(1);
        String[] trigger = fields(1);
        if (start.length < 2 || trigger.length < 2) {
            return OptionalDouble.empty();
        }
        Matcher first = CLOCK.matcher(start[1]);
        Matcher second = CLOCK.matcher(trigger[1]);
        boolean clocks = first.matches() && second.matches();
        if (clocks) {
            String digits = first.group(4);
            nanoseconds = digits != null && digits.length() > MICROSECOND_DIGITS;
        }
        // day and month change places between the revisions: only the same day is sure
        return clocks && start[0].equals(trigger[0])
                ? OptionalDouble.of(seconds(second) - seconds(first))
                : OptionalDouble.empty();
    }

    private static double seconds(Matcher clock) {
        return 3600.0 * Integer.parseInt(clock.group(1))
                + 60.0 * Integer.parseInt(clock.group(2))
                + Double.parseDouble(clock.group(3));
    }

    private String line() throws UnreadableException {
        if (next == lines.size()) {
            throw new UnreadableException(
                    file, "line " + (firstLine + next), "the configuration ends too early", ADVICE);
        }
        return lines.get(next++);
    }

    private String[] fields(int fewest) throws UnreadableException {
        String[] fields = line().split(",", -1);
        if (fields.length < fewest) {
            throw broken("has " + fields.length + " fields instead of at least " + fewest);
        }
        return Arrays.stream(fields).map(String::strip).toArray(String[]::new);
    }

    private double number(String text) throws UnreadableException {
        try {
            double value = Double.parseDouble(text.strip());
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            // said below, as for what is not finite
        }
        throw broken("says '" + LineSource.quote(text) + "' where a number should stand");
    }

    private long wholeNumber(String text) throws UnreadableException {
        String digits = text.strip();
        if (!digits.matches("\\d{1,18}")) {
            throw broken("says '" + LineSource.quote(text) + "' where a whole number should stand");
        }
        return Long.parseLong(digits);
    }

    private UnreadableException broken(String problem) {
        return new UnreadableException(file, "line " + (firstLine + next - 1), "the line " + problem, ADVICE);
    }
}
