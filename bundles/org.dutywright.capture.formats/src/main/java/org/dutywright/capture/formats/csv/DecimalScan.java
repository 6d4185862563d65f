// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Reads a plain decimal number from where it starts to where it ends. A whole number up to 2^53, multiplied or divided by
 * a power of ten up to 10^22, is rounded once and therefore the nearest double (W. D. Clinger, "How to read floating
 * point numbers accurately", PLDI 1990, doi:10.1145/93542.93557); all other numbers are left to {@link NumberCell}.
 * Digits behind the mark are taken eight at a time: at least eight bytes must follow in the array. For one thread.
 */
final class DecimalScan {
    /** There is no number at that place. */
    static final int NO_NUMBER = -1;

    private static final VarHandle LONGS = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final long ZEROS = 0x3030303030303030L;
    private static final long ABOVE_NINE = 0x7676767676767676L;
    private static final long HIGH_BITS = 0x8080808080808080L;
    private static final long LARGEST_EXACT = 1L << 53;
    private static final int MOST_DIGITS = 18;
    private static final int MOST_EXPONENT_DIGITS = 4;
    private static final int LARGEST_POWER = 22;
    private static final double[] POWERS = new double[LARGEST_POWER + 1];
    private static final long[] WHOLE_POWERS = new long[Long.BYTES + 1];

    static {
        for (int i = 0; i < POWERS.length; i++) {
            POWERS[i] = Double.parseDouble("1e" + i);
        }
        for (int i = 0; i < WHOLE_POWERS.length; i++) {
            WHOLE_POWERS[i] = (long) POWERS[i];
        }
    }

    private final byte mark;
    private final NumberCell others;
    private double value;
    private long whole;
    private int decimals;
    private boolean exact;

    DecimalScan(boolean decimalComma) {
        mark = (byte) (decimalComma ? ',' : '.');
        others = new NumberCell(decimalComma);
    }

    /**
     * Reads.
     *
     * @return the place after the number, or {@link #NO_NUMBER}
     */
    int scan(byte[] bytes, int start) {
        byte first = bytes[start];
        int from = first == '-' || first == '+' ? start + 1 : start;
        int at = from;
        long number = 0;
        for (int digit = bytes[at] - '0'; digit >= 0 && digit <= 9; digit = bytes[++at] - '0') {
            number = 10 * number + digit;
        }
        int digits = at - from;
        int fraction = 0;
        if (bytes[at] == mark) {
            int behind = ++at;
            int here;
            do {
                long word = eight(bytes, at);
                here = digits(word);
                if (here > 0) {
                    number = append(number, word, here);
                    at += here;
                }
            } while (here == Long.BYTES);
            fraction = at - behind;
        }
        whole = number;
        return digits + fraction == 0 ? NO_NUMBER : exponent(bytes, start, at, digits + fraction, fraction);
    }

    /** Eight characters, those that are digits as their values; the first in the lowest byte. */
    static long eight(byte[] bytes, int at) {
        return (long) LONGS.get(bytes, at) ^ ZEROS;
    }

    /** How many of eight characters are digits, up to the first that is none. */
    static int digits(long eight) {
        return Long.numberOfTrailingZeros(((eight + ABOVE_NINE) | eight) & HIGH_BITS) >>> 3;
    }

    /** Appends the first of eight characters, at least one, to a whole number. */
    static long append(long number, long eight, int digits) {
        long all = eight << (Long.SIZE - Byte.SIZE * digits);
        long pairs = all * 10 + (all >>> 8);
        long value = ((pairs & 0x000000FF000000FFL) * 0x000F424000000064L
                        + (pairs >>> 16 & 0x000000FF000000FFL) * 0x0000271000000001L)
                >>> 32;
        return number * WHOLE_POWERS[digits] + value;
    }

    /** Whether a whole number of so many digits, divided by a power of ten, is the nearest double. */
    static boolean isExact(long number, int digits) {
        return digits > 0 && digits <= MOST_DIGITS && number <= LARGEST_EXACT;
    }

    /** A whole number with some of its digits behind the mark, fewer than {@link #MOST_DIGITS}. */
    static double divided(long number, int decimals) {
        return number / POWERS[decimals];
    }

    private int exponent(byte[] bytes, int start, int from, int digits, int fraction) {
        int at = from;
        int exponent = 0;
        if ((bytes[at] | 0x20) == 'e') {
            byte sign = bytes[++at];
            at += sign == '-' || sign == '+' ? 1 : 0;
            int firstDigit = at;
            for (int digit = bytes[at] - '0'; digit >= 0 && digit <= 9; digit = bytes[++at] - '0') {
                exponent = 10 * exponent + digit;
                if (at - firstDigit >= MOST_EXPONENT_DIGITS) {
                    return NO_NUMBER;
                }
            }
            if (at == firstDigit) {
                return NO_NUMBER;
            }
            exponent = sign == '-' ? -exponent : exponent;
        }
        decimals = fraction - exponent;
        exact = isExact(whole, digits) && Math.abs(decimals) <= LARGEST_POWER;
        if (exact) {
            double magnitude = decimals >= 0 ? whole / POWERS[decimals] : whole * POWERS[-decimals];
            value = bytes[start] == '-' ? -magnitude : magnitude;
            return at;
        }
        return other(bytes, start, at);
    }

    private int other(byte[] bytes, int start, int end) {
        try {
            value = others.parse(bytes, start, end);
        } catch (NumberFormatException e) {
            return NO_NUMBER;
        }
        return Double.isNaN(value) ? NO_NUMBER : end;
    }

    /** The number read last. */
    double value() {
        return value;
    }

    /** Counts the digits of the number read last, which stands there. */
    void addTo(StampDigits digits, byte[] bytes, int start, int end) {
        if (exact) {
            digits.add(whole, decimals);
        } else {
            digits.add(bytes, start, end);
        }
    }
}
