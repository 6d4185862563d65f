// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.coverage;

import java.util.Map;
import java.util.TreeMap;
import org.dutywright.pulse.Budget;

/** How often intervals of one quantity held the truth. For one thread. */
final class Tally {
    private final Map<String, Integer> dominant = new TreeMap<>();
    private int trials;
    private int held;
    private double squares;
    private double largest;
    private double shares;

    void add(Truth.Pair pair) {
        trials++;
        held += pair.holds() ? 1 : 0;
        double u = pair.measured().u();
        double ratio = u > 0 ? (pair.measured().value() - pair.truth()) / u : 0;
        squares += ratio * ratio;
        largest = Math.max(largest, Math.abs(ratio));
        Budget budget = pair.measured().budget();
        budget.dominant().ifPresent(it -> {
            dominant.merge(it.name() + " (" + it.shape().word() + ")", 1, Integer::sum);
            shares += it.u() * it.u() / (budget.u() * budget.u());
        });
    }

    int trials() {
        return trials;
    }

    /** Share of the intervals that held the truth. */
    double coverage() {
        return (double) held / trials;
    }

    /** Half-width of the band in which the share of a 95 % interval lies 95 times in 100. */
    double band() {
        return 1.96 * Math.sqrt(0.95 * 0.05 / trials);
    }

    /** RMS of the errors in standard uncertainties. */
    double rms() {
        return Math.sqrt(squares / trials);
    }

    /** Mean share of the largest component in the variance. */
    double dominantShare() {
        return shares / trials;
    }

    /** The component that is largest most often. */
    String dominant() {
        return dominant.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse("nothing");
    }
}
