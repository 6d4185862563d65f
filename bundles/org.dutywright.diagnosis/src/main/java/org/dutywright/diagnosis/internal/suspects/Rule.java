// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.List;

/** One piece of the trade's knowledge of how faults show in a waveform; stateless. */
@FunctionalInterface
interface Rule {
    /** What it finds, empty if the evidence does not concern it. */
    List<Finding> findings(Evidence evidence);
}
