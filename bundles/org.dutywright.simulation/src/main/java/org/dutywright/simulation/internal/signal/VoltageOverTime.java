// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

/** A noiseless voltage, known at every instant. */
interface VoltageOverTime {

    /** The voltage at an instant; the instants asked for must not run backwards. */
    double voltsAt(double seconds);

    /** Tells the truth about everything up to the end of the recording, sampled or not. */
    void finish();
}
