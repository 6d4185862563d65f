// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import org.dutywright.pulse.Aberration;

/** The sample of a region that went furthest beyond a level, with its neighbours. */
final class Extreme {
    private double beyond = Double.NaN;
    private int samples;
    private double bend;
    private double before;
    private boolean followed = true;

    /**
     * Takes a sample of the region.
     *
     * @param x how far it is beyond the level
     * @param previous the same of the sample before it, inside the region or not
     */
    void add(double x, double previous) {
        follow(x);
        samples++;
        if (!(x <= beyond)) {
            beyond = x;
            before = previous;
            bend = 0;
            followed = false;
        }
    }

    /** Takes the sample after the region, which is a neighbour. */
    void follow(double x) {
        if (!followed) {
            bend = Math.abs(2 * beyond - before - x) / 8;
            followed = true;
        }
    }

    void set(double newBeyond, int newSamples, double newBend) {
        beyond = newBeyond;
        samples = newSamples;
        bend = newBend;
    }

    double beyond() {
        return beyond;
    }

    int samples() {
        return samples;
    }

    double bend() {
        return bend;
    }

    Aberration aberration() {
        return samples == 0 ? Aberration.NONE : new Aberration(beyond, samples, bend);
    }
}
