// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.agreement;

import java.util.ArrayList;
import java.util.List;
import org.dutywright.diagnosis.internal.agreement.PairWalk.PairListener;

/**
 * Adds to each pair how fast the travel changes: the slope of a least-squares line through the pair and up to
 * {@value #REACH} neighbours on each side in the same unbroken stretch. Five cycles follow a fast stroke and still
 * keep the noise of single cycles from looking like movement. Of the two channels the slower one counts, so that a
 * faulty channel that jumps does not earn itself the wider limit of a moving pair.
 */
final class RateWindow implements PairListener {
    /** Neighbours on each side. */
    static final int REACH = 2;

    private final JudgedListener listener;
    private final List<PairedTravel> window = new ArrayList<>();
    private int next;

    RateWindow(JudgedListener listener) {
        this.listener = listener;
    }

    /** Takes pairs with their rate. */
    interface JudgedListener {
        /**
         * A pair.
         *
         * @param startSeconds where the time that the pair stands for begins: half-way to the pair before, at the
         *     start of a stretch half a period before
         * @param endSeconds where it ends, likewise
         * @param ratePercentPerSecond absolute rate of the slower channel, 0 for a pair without neighbours
         */
        void judged(PairedTravel pair, double startSeconds, double endSeconds, double ratePercentPerSecond);

        /** The stretch ended. */
        void broken();
    }

    @Override
    public void paired(PairedTravel travel) {
        window.add(travel);
        if (window.size() - next > REACH) {
            emit();
        }
    }

    @Override
    public void broken() {
        while (next < window.size()) {
            emit();
        }
        window.clear();
        next = 0;
        listener.broken();
    }

    private void emit() {
        PairedTravel pair = window.get(next);
        double half = pair.periodSeconds() / 2;
        double start = next > 0 ? (window.get(next - 1).seconds() + pair.seconds()) / 2 : pair.seconds() - half;
        double end = next + 1 < window.size()
                ? (pair.seconds() + window.get(next + 1).seconds()) / 2
                : pair.seconds() + half;
        listener.judged(pair, start, end, rate());
        next++;
        if (next > REACH) {
            window.remove(0);
            next--;
        }
    }

    private double rate() {
        List<PairedTravel> around =
                window.subList(Math.max(0, next - REACH), Math.min(window.size(), next + REACH + 1));
        double meanSeconds =
                around.stream().mapToDouble(PairedTravel::seconds).average().orElseThrow();
        double squares = 0;
        double firstProducts = 0;
        double secondProducts = 0;
        for (PairedTravel pair : around) {
            double offset = pair.seconds() - meanSeconds;
            squares += offset * offset;
            firstProducts += offset * pair.firstPercent();
            secondProducts += offset * pair.secondPercent();
        }
        return squares == 0 ? 0 : Math.min(Math.abs(firstProducts), Math.abs(secondProducts)) / squares;
    }
}
