// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.coverage;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.dutywright.reference.Page;
import org.dutywright.reference.Study;

/** How often the 95 % intervals hold the truth, corner by corner and quantity by quantity. */
public final class CoverageStudy implements Study {
    /** Cycles in a capture. */
    static final int CYCLES = 60;

    private static final int CAPTURES = 500;

    @Override
    public String name() {
        return "coverage";
    }

    @Override
    public String title() {
        return "Coverage of the 95 % intervals";
    }

    @Override
    public void run(double share, Page page) throws IOException {
        int captures = (int) Math.max(1, Math.round(share * CAPTURES));
        Map<Corner, Map<Quantity, Tally>> found = new LinkedHashMap<>();
        for (Corner corner : Corners.ALL) {
            found.put(corner, tally(corner, captures));
        }
        double band = 100 * 1.96 * Math.sqrt(0.95 * 0.05 / captures);
        page.paragraph(String.format(
                Locale.ROOT,
                "%d captures of %d cycles, %d a corner with the seeds 0 to %d: carriers of 190 to 210 Hz, swings of 4 to 12 V, either"
                        + " active level. Drawn anew for each capture from what the budgets state: the clock's error within 50 ppm,"
                        + " the place of the edges between two samples and of the levels between two codes, noise, and where the"
                        + " corner states them gain and offset errors. The truth is the closed form of the signal over the cycles that"
                        + " were measured; at the input, the instants at which it passes the stated thresholds; of overshoot, the"
                        + " peak of a second-order system, and none of the other forms.",
                captures * Corners.ALL.size(),
                CYCLES,
                captures,
                captures - 1));
        page.paragraph(String.format(
                Locale.ROOT,
                "An interval that holds 95 %% shows 95 ± %.1f %% here (95 %% band of a binomial share). More than that is what a"
                        + " bound costs where a rectangular or one-sided part dominates.",
                band));
        page.heading("Corners");
        page.table(corners());
        page.heading("Share of the intervals that hold the truth, percent");
        page.table(coverage(found));
        page.heading("What dominates");
        page.paragraph(
                "RMS: of the errors, in stated standard uncertainties; 1 where the budget is exact. Share: of the largest"
                        + " component in the variance.");
        page.table(dominant(found));
    }

    /** Runs captures of one corner. */
    static Map<Quantity, Tally> tally(Corner corner, int captures) throws IOException {
        Map<Quantity, Tally> tallies = new EnumMap<>(Quantity.class);
        for (int seed = 0; seed < captures; seed++) {
            for (Map.Entry<Quantity, Truth.Pair> pair :
                    new Trial(corner, CYCLES, seed).run().pairs().entrySet()) {
                tallies.computeIfAbsent(pair.getKey(), it -> new Tally()).add(pair.getValue());
            }
        }
        return tallies;
    }

    private static Page.Table corners() {
        Page.Table table = new Page.Table("corner", "signal and recorder");
        Corners.ALL.forEach(it -> table.row(it.name(), it.words()));
        return table;
    }

    private static Page.Table coverage(Map<Corner, Map<Quantity, Tally>> found) {
        List<String> headings = new ArrayList<>();
        headings.add("corner");
        for (Quantity quantity : Quantity.values()) {
            headings.add(quantity.words());
        }
        Page.Table table = new Page.Table(headings.toArray(String[]::new));
        found.forEach((corner, tallies) -> {
            List<Object> row = new ArrayList<>();
            row.add(corner.name());
            for (Quantity quantity : Quantity.values()) {
                Tally tally = tallies.get(quantity);
                row.add(tally == null ? "-" : String.format(Locale.ROOT, "%.1f", 100 * tally.coverage()));
            }
            table.row(row.toArray());
        });
        return table;
    }

    private static Page.Table dominant(Map<Corner, Map<Quantity, Tally>> found) {
        Page.Table table = new Page.Table("corner", "quantity", "percent", "RMS", "largest component", "share");
        found.forEach((corner, tallies) -> tallies.forEach((quantity, tally) -> table.row(
                corner.name(),
                quantity.words(),
                String.format(Locale.ROOT, "%.1f", 100 * tally.coverage()),
                String.format(Locale.ROOT, "%.2f", tally.rms()),
                tally.dominant(),
                String.format(Locale.ROOT, "%.0f %%", 100 * tally.dominantShare()))));
        return table;
    }
}
