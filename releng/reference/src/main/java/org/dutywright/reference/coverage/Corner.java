// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.coverage;

import java.util.Locale;
import java.util.function.Consumer;

/**
 * One kind of signal and recorder; what is not said here is drawn anew for each capture. Plain: ramps of 50 us, 100 kS/s, 1 %
 * white noise, 12 bits over 1.4 swings, 30 % duty. Not changed once it is in the list of corners.
 */
final class Corner {
    private final String name;
    private double sampleRateHz = 100e3;
    private double duty = 0.3;
    private double movingDuty;
    private Form rise = Form.RAMP;
    private double riseSeconds = 50e-6;
    private Form fall = Form.RAMP;
    private double fallSeconds = 50e-6;
    private double noiseShare = 0.01;
    private double noiseKeep;
    private int bits = 12;
    private double jitterSeconds;
    private boolean locked;
    private double gainShare;
    private double offsetVolts;
    private boolean gap;
    private double inputRising = 0.65;
    private double inputFalling = 0.35;

    private Corner(String name) {
        this.name = name;
    }

    /** A plain one. */
    static Corner named(String name) {
        return new Corner(name);
    }

    private Corner with(Consumer<Corner> change) {
        Corner other = new Corner(name);
        other.sampleRateHz = sampleRateHz;
        other.duty = duty;
        other.movingDuty = movingDuty;
        other.rise = rise;
        other.riseSeconds = riseSeconds;
        other.fall = fall;
        other.fallSeconds = fallSeconds;
        other.noiseShare = noiseShare;
        other.noiseKeep = noiseKeep;
        other.bits = bits;
        other.jitterSeconds = jitterSeconds;
        other.locked = locked;
        other.gainShare = gainShare;
        other.offsetVolts = offsetVolts;
        other.gap = gap;
        other.inputRising = inputRising;
        other.inputFalling = inputFalling;
        change.accept(other);
        return other;
    }

    Corner rate(double hertz) {
        return with(it -> it.sampleRateHz = hertz);
    }

    /** Mean duty of the first cycle from 0 to 1, and by how much it rises to the last one. */
    Corner duty(double from, double moving) {
        return with(it -> {
            it.duty = from;
            it.movingDuty = moving;
        });
    }

    /** Forms of the transitions with their scales, 0 for instant ones. */
    Corner edges(Form rising, double risingSeconds, Form falling, double fallingSeconds) {
        return with(it -> {
            it.rise = rising;
            it.riseSeconds = risingSeconds;
            it.fall = falling;
            it.fallSeconds = fallingSeconds;
        });
    }

    /** RMS of the noise as a share of the swing and its lag-1 correlation, 0 for white. */
    Corner noise(double share, double keep) {
        return with(it -> {
            it.noiseShare = share;
            it.noiseKeep = keep;
        });
    }

    Corner bits(int number) {
        return with(it -> it.bits = number);
    }

    /** Standard deviation of each transition's own place. */
    Corner jitter(double seconds) {
        return with(it -> it.jitterSeconds = seconds);
    }

    /** The carrier is locked to the recorder's clock. */
    Corner lockedToSamples() {
        return with(it -> it.locked = true);
    }

    /** Half-widths of the gain error, as a share, and of the offset error; both are drawn and stated. */
    Corner instrument(double gain, double offset) {
        return with(it -> {
            it.gainShare = gain;
            it.offsetVolts = offset;
        });
    }

    /** A twentieth of the recording is missing. */
    Corner withGap() {
        return with(it -> it.gap = true);
    }

    /** Thresholds of the module's input as shares of the swing. */
    Corner input(double rising, double falling) {
        return with(it -> {
            it.inputRising = rising;
            it.inputFalling = falling;
        });
    }

    String name() {
        return name;
    }

    double sampleRateHz() {
        return sampleRateHz;
    }

    double duty() {
        return duty;
    }

    double movingDuty() {
        return movingDuty;
    }

    Form form(boolean rising) {
        return rising ? rise : fall;
    }

    double scaleSeconds(boolean rising) {
        return rising ? riseSeconds : fallSeconds;
    }

    /** Where on the way from the low to the high level the input sees an edge. */
    double inputShare(boolean rising) {
        return rising ? inputRising : inputFalling;
    }

    double noiseShare() {
        return noiseShare;
    }

    double noiseKeep() {
        return noiseKeep;
    }

    int bits() {
        return bits;
    }

    double jitterSeconds() {
        return jitterSeconds;
    }

    boolean locked() {
        return locked;
    }

    double gainShare() {
        return gainShare;
    }

    double offsetVolts() {
        return offsetVolts;
    }

    boolean gap() {
        return gap;
    }

    /** What it is, in words. */
    String words() {
        StringBuilder words = new StringBuilder();
        words.append(Math.round(sampleRateHz / 1e3))
                .append(" kS/s, duty ")
                .append(Math.round(100 * duty))
                .append(" %");
        if (movingDuty != 0) {
            words.append(" moving by ").append(Math.round(100 * movingDuty)).append(" points");
        }
        words.append(", ").append(edge(rise, riseSeconds)).append(" / ").append(edge(fall, fallSeconds));
        words.append(String.format(Locale.ROOT, ", noise %.1f %%", 100 * noiseShare));
        words.append(noiseKeep > 0 ? " (neighbours correlated by " + noiseKeep + ")" : "");
        words.append(", ").append(bits).append(" bits");
        words.append(locked ? ", locked to the samples" : "");
        words.append(jitterSeconds > 0 ? ", jitter " + Math.round(1e7 * jitterSeconds) / 10.0 + " us" : "");
        words.append(gainShare > 0 ? String.format(Locale.ROOT, ", gain within %.1f %%", 100 * gainShare) : "");
        words.append(offsetVolts > 0 ? String.format(Locale.ROOT, ", offset within %.0f mV", 1e3 * offsetVolts) : "");
        words.append(String.format(Locale.ROOT, ", input %.0f/%.0f %%", 100 * inputRising, 100 * inputFalling));
        words.append(gap ? ", a gap in the recording" : "");
        return words.toString();
    }

    private static String edge(Form form, double seconds) {
        return seconds == 0
                ? "instant"
                : form.name().toLowerCase(Locale.ROOT) + " " + Math.round(1e6 * seconds) + " us";
    }
}
