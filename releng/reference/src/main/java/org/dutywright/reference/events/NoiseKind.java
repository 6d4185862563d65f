// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.events;

import java.util.Random;

/** Normal noise of a recorder. */
enum NoiseKind {
    /** Independent from sample to sample. */
    WHITE("white"),
    /** Through a single pole at a 20th to a quarter of the sample rate, as behind an input filter: neighbours are alike. */
    BAND_LIMITED("band-limited");

    private static final double LOWEST_CORNER = 0.05;
    private static final double HIGHEST_CORNER = 0.25;

    private final String word;

    NoiseKind(String word) {
        this.word = word;
    }

    String word() {
        return word;
    }

    /** Adds noise of an RMS to samples. */
    void addTo(double[] samples, double rms, Random random) {
        if (rms == 0) {
            return;
        }
        // y[k] = a y[k-1] + sqrt(1 - a^2) w[k] has the variance of w; a = exp(-2 pi f_c / f_s)
        double corner = LOWEST_CORNER * Math.pow(HIGHEST_CORNER / LOWEST_CORNER, random.nextDouble());
        double keep = this == WHITE ? 0 : Math.exp(-2 * Math.PI * corner);
        double fresh = Math.sqrt(1 - keep * keep);
        double noise = random.nextGaussian();
        for (int i = 0; i < samples.length; i++) {
            samples[i] += rms * noise;
            noise = keep * noise + fresh * random.nextGaussian();
        }
    }
}
