// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.wav;

/** Expands one byte of a telephone's code by ITU-T G.711, tables 1 and 2, to a share of full scale (16 bits). */
final class Companding {
    private static final double FULL_SCALE = 32768;
    private static final int U_LAW_BIAS = 33;

    private Companding() {}

    /** u-law: 14 bits with sign, all bits inverted. The largest value is 8031 of 8192. */
    static double uLaw(byte code) {
        int inverted = ~code;
        int exponent = inverted >> 4 & 7;
        int magnitude = ((2 * (inverted & 15) + U_LAW_BIAS) << exponent) - U_LAW_BIAS;
        return signed((inverted & 0x80) != 0, 4 * magnitude);
    }

    /** A-law: 13 bits with sign, every other bit inverted. The largest value is 4032 of 4096. */
    static double aLaw(byte code) {
        int inverted = code ^ 0x55;
        int exponent = inverted >> 4 & 7;
        int steps = 2 * (inverted & 15) + 1;
        int magnitude = exponent == 0 ? steps : (steps + 32) << (exponent - 1);
        return signed((inverted & 0x80) == 0, 8 * magnitude);
    }

    private static double signed(boolean negative, int magnitude) {
        return (negative && magnitude != 0 ? -magnitude : magnitude) / FULL_SCALE;
    }
}
