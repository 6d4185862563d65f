// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Gathers the problems of one file, so that its author sees all of them at once. */
public final class Problems {
    private static final Comparator<Problem> BY_PLACE = Comparator.comparingInt(
                    (Problem problem) -> problem.mark().line())
            .thenComparingInt(problem -> problem.mark().column());

    private final String file;
    private final List<Problem> list = new ArrayList<>();

    /** Starts without a problem; {@code file} is the file as the user named it. */
    public Problems(String file) {
        this.file = file;
    }

    /** Adds a problem; the message says what is wrong and what to write. */
    public void add(Mark mark, String message) {
        list.add(new Problem(file, mark, message));
    }

    /** Whether there is none so far. */
    public boolean isEmpty() {
        return list.isEmpty();
    }

    /** All problems so far, in the order of their places. */
    public List<Problem> list() {
        return list.stream().sorted(BY_PLACE).toList();
    }

    /** Throws if there is any. */
    public void throwIfAny() throws ProblemsException {
        if (!list.isEmpty()) {
            throw new ProblemsException(list());
        }
    }
}
