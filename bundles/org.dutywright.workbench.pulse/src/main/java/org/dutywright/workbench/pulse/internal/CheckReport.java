// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.dutywright.diagnosis.CheckResult;
import org.dutywright.diagnosis.Verdict;
import org.dutywright.report.CheckText;
import org.dutywright.report.VerdictText;
import org.dutywright.workbench.WindowWords;
import org.eclipse.osgi.util.NLS;

/**
 * What a check found, for people.
 *
 * @param verdict empty if the check could not be made
 * @param headline the verdict with its mark, in one line
 * @param lines all that was found
 */
public record CheckReport(Optional<Verdict> verdict, String headline, List<String> lines) {
    /** Copies the lines. */
    public CheckReport {
        lines = List.copyOf(lines);
    }

    static CheckReport of(CheckResult result) throws IOException {
        return new CheckReport(
                Optional.of(result.verdict()),
                mark(result.verdict()) + " " + result.sensor().id() + ": " + VerdictText.words(result.verdict()),
                CheckText.lines(result).stream().map(WindowWords::of).toList());
    }

    static CheckReport failed(String reason) {
        return new CheckReport(Optional.empty(), NLS.bind(Messages.notCheckedBecause, reason), List.of());
    }

    private static String mark(Verdict verdict) {
        return switch (verdict) {
            case CONFORMS -> "\u2713";
            case DOES_NOT_CONFORM -> "\u2717";
            case INCONCLUSIVE -> "?";
        };
    }
}
