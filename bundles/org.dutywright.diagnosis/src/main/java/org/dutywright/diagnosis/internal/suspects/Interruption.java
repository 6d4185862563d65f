// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.Optional;
import org.dutywright.pulse.EventKind;

/**
 * A stretch without pulses that came back.
 *
 * @param kind dropout or missing pulse
 * @param span from the last transition before to the first after
 * @param state where the signal stood meanwhile
 * @param phase empty if there are too few healthy cycles beside it
 * @param together whether another channel was interrupted within one cycle
 */
record Interruption(EventKind kind, Span span, State state, Optional<CarrierPhase> phase, boolean together) {
    /** Where a signal stands. */
    enum State {
        HIGH,
        LOW,
        /** Between the states, or not to be told. */
        BETWEEN
    }

    boolean phaseIs(CarrierPhase.Verdict verdict) {
        return phase.map(CarrierPhase::verdict).orElse(CarrierPhase.Verdict.UNTOLD) == verdict;
    }
}
