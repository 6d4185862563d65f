// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

import java.util.List;
import org.dutywright.simulation.Fault;
import org.dutywright.simulation.Scenario;
import org.dutywright.simulation.Supply;

/** The supply voltage at the sensor's plug: 0 V while the supply line is interrupted. */
final class SupplyLine implements VoltageOverTime {

    private final double volts;
    private final ActiveSpans<Fault> interruptions;

    SupplyLine(Scenario scenario, Supply supply) {
        this.volts = supply.volts();
        double start = scenario.recording().startSeconds();
        List<Span<Fault>> spans = scenario.faults().stream()
                .filter(fault -> fault instanceof Fault.SupplyLoss loss && loss.supplyLine())
                .map(fault -> Span.of(fault, start))
                .toList();
        this.interruptions = ActiveSpans.of(spans);
    }

    @Override
    public double voltsAt(double seconds) {
        return interruptions.at(seconds).isEmpty() ? volts : 0;
    }

    @Override
    public void finish() {
        // What interrupts the supply is told by the channels that lose it.
    }
}
