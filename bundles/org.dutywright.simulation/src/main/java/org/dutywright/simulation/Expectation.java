// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import java.util.List;
import java.util.Optional;

/**
 * What a check of the capture should come to.
 *
 * @param verdict "conforms", "does-not-conform" or "inconclusive"
 * @param because items that must carry the verdict: names of lines ("signal1.frequency") or "agreement"
 * @param suspect place of the fault that should stand first ("signal-wire"), empty if none is expected
 */
public record Expectation(String verdict, List<String> because, Optional<String> suspect) {

    /** Copies its arguments. */
    public Expectation {
        because = List.copyOf(because);
    }
}
