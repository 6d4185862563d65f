// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import java.util.List;
import java.util.Optional;

/** What a check comes to. */
public enum Verdict {
    CONFORMS("conforms"),
    DOES_NOT_CONFORM("does-not-conform"),
    INCONCLUSIVE("inconclusive");

    private final String word;

    Verdict(String word) {
        this.word = word;
    }

    /** The word used in files. */
    public String word() {
        return word;
    }

    /**
     * The verdict of a check: does not conform if a line fails or the channels would be flagged; else inconclusive
     * if a line is, or if nothing could be judged; else conforms. Lines that were not judged change nothing.
     *
     * @param lines all lines
     * @param agreement empty if the channels were not compared
     */
    public static Verdict of(List<Line> lines, Optional<AgreementResult> agreement) {
        if (any(lines, LineResult.FAIL)
                || agreement.map(AgreementResult::wouldFlag).orElse(false)) {
            return DOES_NOT_CONFORM;
        }
        boolean judged = any(lines, LineResult.PASS) || agreement.isPresent();
        return any(lines, LineResult.INCONCLUSIVE) || !judged ? INCONCLUSIVE : CONFORMS;
    }

    private static boolean any(List<Line> lines, LineResult result) {
        return lines.stream().anyMatch(line -> line.result() == result);
    }
}
