// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

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
}
