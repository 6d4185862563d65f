// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/**
 * Whether transitions faster than the samples fall on the same place between two samples each time. Then the error of
 * their instants, up to half a sample, is the same for all and never averages out; if they wander over all places, it does.
 *
 * <p>The instants themselves tell it. Straight lines through stretches of up to 32 successive ones give the place of each
 * between the samples, p. The error of an instant is a sawtooth of p; with the place of the first one unknown, the variance of
 * the mean error is the sum over h of step^2 / (2 pi^2 h^2) |mean of exp(2 pi i h p)|^2: step^2 / 12 where all p are the
 * same, near 0 where they cover all places alike. Scatter around the lines counts as in {@link Dither}. Constant memory.
 */
final class SamplingPhases {
    private static final int TERMS = 8;
    private static final int STRETCH = 32;

    /** A distance this much longer than the one before is no neighbour. */
    private static final double APART = 1.5;

    private final double stepSeconds;
    private final double[] stretch = new double[STRETCH];
    private int length;
    private final double[] cosines = new double[TERMS];
    private final double[] sines = new double[TERMS];
    private long count;
    private double residuals;
    private long degrees;
    private double origin = Double.NaN;

    SamplingPhases(double stepSeconds) {
        this.stepSeconds = stepSeconds;
    }

    /** Takes the instant of the next transition of a direction. */
    void add(double seconds) {
        if (Double.isNaN(origin)) {
            origin = seconds;
        }
        double at = (seconds - origin) / stepSeconds;
        boolean apart = length > 1 && at - stretch[length - 1] > APART * (stretch[length - 1] - stretch[length - 2]);
        if (length == STRETCH || apart) {
            flush();
        }
        stretch[length++] = at;
    }

    private void flush() {
        double middle = (length - 1) / 2.0;
        double mean = 0;
        double slope = 0;
        for (int i = 0; i < length; i++) {
            mean += stretch[i] / length;
            slope += (i - middle) * stretch[i];
        }
        // sum of (i - middle)^2
        slope = length < 2 ? 0 : slope / (length * (length * (double) length - 1) / 12);
        for (int i = 0; i < length; i++) {
            double smooth = mean + slope * (i - middle);
            residuals += (stretch[i] - smooth) * (stretch[i] - smooth);
            addTerms(smooth - Math.rint(smooth));
        }
        count += length;
        degrees += Math.max(0, length - 2);
        length = 0;
    }

    // All multiples of an angle from its own sine and cosine, each turned on by it from the one before.
    private void addTerms(double place) {
        double cosine = Math.cos(2 * Math.PI * place);
        double sine = Math.sin(2 * Math.PI * place);
        double c = cosine;
        double s = sine;
        for (int h = 0; h < TERMS; h++) {
            cosines[h] += c;
            sines[h] += s;
            double turned = c * cosine - s * sine;
            s = s * cosine + c * sine;
            c = turned;
        }
    }

    /** Standard uncertainty of the mean error that does not average out, at most a step over sqrt(12). */
    double keptSeconds() {
        flush();
        if (degrees == 0) {
            return stepSeconds / Math.sqrt(12);
        }
        double scatter = Dither.proven(1, Math.sqrt(residuals / degrees));
        double variance = 0;
        double rest = 1.0 / 12;
        double coherence = 1;
        for (int h = 1; h <= TERMS; h++) {
            double c = cosines[h - 1] / count;
            double s = sines[h - 1] / count;
            coherence = c * c + s * s;
            variance += Dither.term(h, scatter) * coherence;
            rest -= Dither.term(h, 0);
        }
        // the terms not looked at are no smaller a part than the last one
        double scatterOfRest = 2 * Math.PI * (TERMS + 1) * scatter;
        variance += rest * coherence * Math.exp(-scatterOfRest * scatterOfRest);
        return stepSeconds * Math.sqrt(Math.min(1.0 / 12, variance));
    }
}
