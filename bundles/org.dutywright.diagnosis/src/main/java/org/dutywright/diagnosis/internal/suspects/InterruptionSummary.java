// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.List;
import java.util.Locale;
import org.dutywright.diagnosis.internal.lines.Say;
import org.dutywright.diagnosis.internal.suspects.CarrierPhase.Verdict;
import org.dutywright.diagnosis.internal.suspects.Interruption.State;

/**
 * Interruptions taken together.
 *
 * @param names of their channels, for sentences
 * @param seen those looked at closely, at least one
 * @param total how many dropouts and missing pulses the channels have in all
 */
record InterruptionSummary(String names, List<Interruption> seen, long total) {

    /** What most of them tell. */
    Verdict phase() {
        long kept = count(Verdict.KEPT);
        long broken = count(Verdict.BROKEN);
        if (kept == broken) {
            return Verdict.UNTOLD;
        }
        // A broken phase falls into step by chance now and then, so single ones do not decide.
        return broken > kept ? Verdict.BROKEN : Verdict.KEPT;
    }

    /** Where the signals stood in most of them. */
    State state() {
        long high = seen.stream().filter(it -> it.state() == State.HIGH).count();
        long low = seen.stream().filter(it -> it.state() == State.LOW).count();
        if (2 * high > seen.size()) {
            return State.HIGH;
        }
        return 2 * low > seen.size() ? State.LOW : State.BETWEEN;
    }

    String fact() {
        double first =
                seen.stream().mapToDouble(it -> it.span().fromSeconds()).min().orElseThrow();
        double longest =
                seen.stream().mapToDouble(it -> it.span().lengthSeconds()).max().orElseThrow();
        String state = switch (state()) {
            case HIGH -> ", high meanwhile";
            case LOW -> ", low meanwhile";
            case BETWEEN -> "";
        };
        String all = total > seen.size() ? ", of " + total + " in all" : "";
        return String.format(
                Locale.ROOT,
                "Pulses of %s are absent in %s%s, the first at %s, for up to %s%s.",
                names,
                places(),
                all,
                Say.instant(first),
                Say.amount(longest, "s"),
                state);
    }

    String aloneFact() {
        return "No other channel is interrupted there within one cycle, looked at in " + places() + ".";
    }

    private String places() {
        return seen.size() == 1 ? "1 place" : seen.size() + " places";
    }

    String phaseFact() {
        long kept = count(Verdict.KEPT);
        long broken = count(Verdict.BROKEN);
        return switch (phase()) {
            case KEPT ->
                String.format(
                        Locale.ROOT,
                        "The carrier is in step across %d of %d (largest residual %.3f of a cycle): the sensor ran on.",
                        kept,
                        kept + broken,
                        largestResidual());
            case BROKEN ->
                String.format(
                        Locale.ROOT,
                        "The carrier is out of step across %d of %d (largest residual %.3f of a cycle): it started"
                                + " anew.",
                        broken,
                        kept + broken,
                        largestResidual());
            case UNTOLD ->
                "The carrier is in step across " + kept + " and out of step across " + broken + " of " + places()
                        + ", which does not tell whether the sensor ran on.";
        };
    }

    private double largestResidual() {
        return seen.stream()
                .filter(it -> !it.phaseIs(Verdict.UNTOLD))
                .mapToDouble(it -> Math.abs(it.phase().orElseThrow().residualCycles()))
                .max()
                .orElse(0);
    }

    private long count(Verdict verdict) {
        return seen.stream().filter(it -> it.phaseIs(verdict)).count();
    }
}
