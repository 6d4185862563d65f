// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads clock times, {@code 12:00:01.005}, with or without a date before them, as in ISO 8601-1:2019 and as instruments
 * write it: the fraction behind a point or a comma, {@code AM} or {@code PM}, a distance to universal time. Not for
 * several threads.
 *
 * <p>An instant is given in seconds since midnight of the first one's day, so that the digits of a fraction last. Without
 * a date, or with one whose day and month cannot be told apart, a clock that goes back by more than half a day has passed
 * midnight once.
 */
final class ClockCell {
    private static final Pattern CLOCK = Pattern.compile(
            "(?:(\\d{1,4}[-/.]\\d{1,2}[-/.]\\d{1,4})(?:T|[ ,;_-]{1,3}))?"
                    + "(\\d{1,2}):(\\d{2}):(\\d{2})(?:[.,](\\d{1,15}))?(?:\\s?([AaPp])\\.?[Mm]\\.?)?\\s?(Z|[+-]\\d{2}(?::?\\d{2})?)?");
    private static final Pattern DATE_PARTS = Pattern.compile("[-/.]");
    private static final int LONGEST = 60;
    private static final int DAY_SECONDS = 86_400;
    private static final int NOON = 12;

    private String date = "";
    private Optional<LocalDate> firstDay = Optional.empty();
    private long day;
    private double lastSeconds = Double.NaN;
    private Optional<Long> firstAway = Optional.empty();
    private int decimals;

    /** Whether a cell, without spaces around, holds a clock time. */
    static boolean isClock(String cell) {
        return cell.length() <= LONGEST
                && cell.indexOf(':') > 0
                && CLOCK.matcher(cell).matches();
    }

    /**
     * Reads a cell without spaces around.
     *
     * @return seconds, or NaN where the cell is empty
     * @throws NumberFormatException if it is anything else
     */
    double parse(byte[] bytes, int from, int to) {
        if (from == to) {
            return Double.NaN;
        }
        String text = new String(bytes, from, Math.min(to - from, LONGEST + 1), StandardCharsets.ISO_8859_1);
        Matcher matcher = CLOCK.matcher(text);
        if (text.length() > LONGEST || !matcher.matches()) {
            throw new NumberFormatException(text);
        }
        String written = matcher.group(1) == null ? "" : matcher.group(1);
        long whole = secondsOfDay(matcher);
        if (!written.equals(date)) {
            firstDay = Double.isNaN(lastSeconds) ? read(written) : firstDay;
            turnTo(written, whole);
        } else if (written.isEmpty() && isPastMidnight(whole)) {
            day++;
        }
        lastSeconds = withFraction(day * DAY_SECONDS + whole, matcher.group(5));
        return lastSeconds;
    }

    private long secondsOfDay(Matcher matcher) {
        int hour = Integer.parseInt(matcher.group(2));
        int minute = Integer.parseInt(matcher.group(3));
        int second = Integer.parseInt(matcher.group(4));
        String half = matcher.group(6);
        // 60 is a leap second
        if (hour > (half == null ? 24 : NOON) || minute > 59 || second > 60) {
            throw new NumberFormatException(matcher.group());
        }
        if (half != null) {
            hour = hour % NOON + (half.equalsIgnoreCase("p") ? NOON : 0);
        }
        return (hour * 60L + minute) * 60 + second - away(matcher.group(7));
    }

    /** A recording that changes its distance to universal time, in the night of a change of clocks, goes on evenly. */
    private long away(String zone) {
        long seconds = 0;
        if (zone != null && !zone.equals("Z")) {
            long minutes = Long.parseLong(zone.substring(1, 3)) * 60
                    + (zone.length() > 3 ? Long.parseLong(zone.substring(zone.length() - 2)) : 0);
            seconds = (zone.charAt(0) == '-' ? -60 : 60) * minutes;
        }
        firstAway = firstAway.isPresent() ? firstAway : Optional.of(seconds);
        return seconds - firstAway.get();
    }

    private boolean isPastMidnight(long secondsOfDay) {
        return day * DAY_SECONDS + secondsOfDay < lastSeconds - DAY_SECONDS / 2.0;
    }

    private double withFraction(long whole, String digits) {
        if (digits == null) {
            return whole;
        }
        decimals = Math.max(decimals, digits.length());
        // in decimal, so that one rounding only lies between the text and the double
        return Double.parseDouble(whole < 0 ? "0." + digits : whole + "." + digits) + Math.min(0, whole);
    }

    private void turnTo(String text, long secondsOfDay) {
        Optional<LocalDate> read = read(text);
        if (firstDay.isPresent() && read.isPresent()) {
            day = read.get().toEpochDay() - firstDay.get().toEpochDay();
        } else if (isPastMidnight(secondsOfDay)) {
            day++;
        } else if (!Double.isNaN(lastSeconds)) {
            throw new NumberFormatException(text);
        }
        date = text;
    }

    /** The day; empty where there is none, or day and month cannot be told apart. */
    private static Optional<LocalDate> read(String text) {
        if (text.isEmpty()) {
            return Optional.empty();
        }
        String[] parts = DATE_PARTS.split(text, -1);
        int first = Integer.parseInt(parts[0]);
        int middle = Integer.parseInt(parts[1]);
        int last = Integer.parseInt(parts[2]);
        try {
            if (parts[0].length() > 2) {
                return Optional.of(LocalDate.of(first, middle, last));
            }
            if (text.indexOf('.') > 0 || first > NOON) {
                return Optional.of(LocalDate.of(last, middle, first));
            }
            return middle > NOON ? Optional.of(LocalDate.of(last, first, middle)) : Optional.empty();
        } catch (DateTimeException e) {
            throw new NumberFormatException(text);
        }
    }

    /** Seconds that the printed digits just tell apart. */
    double resolution() {
        return Math.pow(10, -decimals);
    }
}
