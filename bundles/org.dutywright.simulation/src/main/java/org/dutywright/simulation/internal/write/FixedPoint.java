// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.write;

/** Prints whole multiples of a power of ten as decimal numbers. */
final class FixedPoint {

    /** No number takes more bytes: sign, 19 digits, point, zeros before the first digit. */
    static final int MAX_BYTES = 42;

    private FixedPoint() {}

    /**
     * Prints {@code scaled · 10^-decimals}.
     *
     * @param target has room for {@link #MAX_BYTES} from {@code offset} on
     * @return the offset behind the last byte
     */
    static int print(long scaled, int decimals, byte[] target, int offset) {
        int position = offset;
        if (scaled < 0) {
            target[position++] = '-';
        }
        long rest = Math.abs(scaled);
        int digits = Math.max(digitsOf(rest), decimals + 1);
        int length = decimals == 0 ? digits : digits + 1;
        for (int i = length - 1; i >= 0; i--) {
            if (decimals > 0 && i == digits - decimals) {
                target[position + i] = '.';
            } else {
                target[position + i] = (byte) ('0' + rest % 10);
                rest /= 10;
            }
        }
        return position + length;
    }

    private static int digitsOf(long value) {
        int digits = 1;
        for (long rest = value / 10; rest > 0; rest /= 10) {
            digits++;
        }
        return digits;
    }
}
