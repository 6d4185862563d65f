// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

/** What the samples of one pulse show beside its edges; a plain carrier of numbers. */
final class Shape {
    /** Integral of the squared signal over the pulse. */
    double squares;
    /** Extreme after the transition into the pulse. */
    final Extreme head = new Extreme();
    /** Extreme before the transition out of it. */
    final Extreme tail = new Extreme();
    /** Where the transition into the pulse passed the threshold of the module's input, NaN if not exactly once. */
    double inputSeconds = Double.NaN;
    /** By how much one unit of error of that threshold moves the instant. */
    double inputSecondsPerUnit;
    /** How much later it may be than on the straight line between two samples. */
    double inputBendSeconds;
}
