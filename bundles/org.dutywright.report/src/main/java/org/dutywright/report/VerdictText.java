// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import java.util.ArrayList;
import java.util.List;
import org.dutywright.diagnosis.AgreementResult;
import org.dutywright.diagnosis.CheckResult;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.LineResult;
import org.dutywright.diagnosis.Verdict;
import org.dutywright.report.internal.Show;

/** A verdict in one line, with what it rests on. */
public final class VerdictText {
    private static final int ITEMS_SHOWN = 6;

    private VerdictText() {}

    /**
     * {@code conforms}; {@code does not conform: signal1.events.missing-pulse (3, allowed 0); …};
     * {@code inconclusive: …}.
     */
    public static String line(CheckResult check) {
        return switch (check.verdict()) {
            case CONFORMS -> words(Verdict.CONFORMS);
            case DOES_NOT_CONFORM -> words(check.verdict()) + ": " + joined(failures(check));
            case INCONCLUSIVE -> words(check.verdict()) + ": " + joined(open(check));
        };
    }

    /** The verdict as people say it. */
    public static String words(Verdict verdict) {
        return verdict.word().replace('-', ' ');
    }

    private static List<String> failures(CheckResult check) {
        List<String> items = items(check, LineResult.FAIL);
        check.agreement()
                .filter(AgreementResult::wouldFlag)
                .ifPresent(agreement -> items.add("agreement (" + agreement(agreement) + ")"));
        return items;
    }

    private static List<String> open(CheckResult check) {
        List<String> items = items(check, LineResult.INCONCLUSIVE);
        if (items.isEmpty()) {
            items.add("nothing could be judged");
        }
        return items;
    }

    private static List<String> items(CheckResult check, LineResult result) {
        List<String> items = new ArrayList<>();
        for (Line line : check.lines()) {
            if (line.result() == result) {
                items.add(line.item() + " (" + fact(line) + ")");
            }
        }
        return items;
    }

    private static String fact(Line line) {
        if (line.measured().isEmpty()) {
            return line.reason();
        }
        String measured = Show.measured(line.measured(), line.u(), line.unit()).orElseThrow();
        if (line.unit().isEmpty()) {
            return measured + ", allowed " + Show.exact(line.upper().orElse(0), "");
        }
        String limits = Show.limits(line.lower(), line.upper(), line.unit());
        return limits.isEmpty() ? measured : measured + ", allowed " + limits;
    }

    /** How far the channels lie apart, and how far they may. */
    public static String agreement(AgreementResult agreement) {
        return "largest difference " + Show.spread(agreement.maxDifferencePercent(), "%") + " of travel, allowed "
                + Show.exact(agreement.limitPercent(), "%") + "; beyond it for "
                + Show.spread(agreement.longestBeyondLimitSeconds(), "s") + ", confirmation "
                + Show.exact(agreement.confirmationSeconds(), "s");
    }

    private static String joined(List<String> items) {
        if (items.size() <= ITEMS_SHOWN) {
            return String.join("; ", items);
        }
        return String.join("; ", items.subList(0, ITEMS_SHOWN)) + "; and " + (items.size() - ITEMS_SHOWN) + " more";
    }
}
