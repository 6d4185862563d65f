// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

/** What became of one judged item. */
public enum LineResult {
    PASS("pass"),
    FAIL("fail"),
    INCONCLUSIVE("inconclusive"),
    NOT_JUDGED("not-judged");

    private final String word;

    LineResult(String word) {
        this.word = word;
    }

    /** The word used in files. */
    public String word() {
        return word;
    }
}
