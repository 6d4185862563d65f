// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.dutywright.pulse.Result;
import org.dutywright.report.internal.Found;

/** The order in which people read results: the built-in ones as the report has them, then those of other measurements. */
public final class ResultOrder {
    private ResultOrder() {}

    /** All results in that order. */
    public static List<Result> of(Map<String, Result> results) {
        List<Result> ordered = new ArrayList<>(Found.builtIn(results));
        ordered.addAll(Found.others(results));
        return List.copyOf(ordered);
    }
}
