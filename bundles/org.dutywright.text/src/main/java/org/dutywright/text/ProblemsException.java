// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

import java.util.List;
import java.util.stream.Collectors;

/** A text file with problems; carries all of them. */
public final class ProblemsException extends Exception {
    private static final long serialVersionUID = 1L;
    private final transient List<Problem> problems;

    /** Makes the exception for at least one problem. */
    public ProblemsException(List<Problem> problems) {
        super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
        this.problems = List.copyOf(problems);
    }

    /** All problems, in the order of their places. */
    public List<Problem> problems() {
        return problems;
    }
}
