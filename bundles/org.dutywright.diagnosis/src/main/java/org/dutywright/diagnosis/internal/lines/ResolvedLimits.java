// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.LineResult;
import org.dutywright.diagnosis.internal.lines.LineJudge.Limits;
import org.dutywright.diagnosis.internal.lines.LineJudge.Value;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.Fitness;
import org.dutywright.sensor.Sensor.Limit;
import org.dutywright.sensor.Sensor.Range;

/**
 * Limits in base units, those in "% of supply" taken from the supply voltage.
 *
 * @param limits the ones that are known
 * @param limitU standard uncertainty of the limits that came from a measured supply; it is combined with that of the
 *     value, so that value, u, limits and probability of a line belong together
 * @param missing why one limit is not known, empty if all are
 */
record ResolvedLimits(Limits limits, double limitU, String missing) {

    static ResolvedLimits of(Range range, SupplyVoltage supply) {
        OptionalDouble lower = resolve(range.min(), supply);
        OptionalDouble upper = resolve(range.max(), supply);
        boolean incomplete =
                range.min().isPresent() != lower.isPresent() || range.max().isPresent() != upper.isPresent();
        double share = Stream.of(range.min(), range.max())
                .flatMap(Optional::stream)
                .filter(Limit::percentOfSupply)
                .mapToDouble(it -> it.value() / 100)
                .max()
                .orElse(0);
        String remark = share > 0 && !incomplete ? supply.origin() : "";
        return new ResolvedLimits(
                new Limits(lower, upper, remark), share * supply.u(), incomplete ? supply.origin() : "");
    }

    /** Judges; with a limit missing only a value beyond the other one is a finding. */
    Line judge(LineJudge judge, String item, Value value, Optional<Fitness> fitness) {
        Value combined = new Value(
                value.measured(),
                Math.hypot(value.u(), limitU),
                value.unit(),
                value.budget().and(List.of(Component.normal("the supply that the limit refers to", limitU))));
        Line judged = judge.judged(item, combined, limits, fitness, "");
        if (missing.isEmpty() || judged.result() == LineResult.FAIL) {
            return judged;
        }
        return new Line(
                item,
                judged.measured(),
                judged.u(),
                judged.unit(),
                limits.lower(),
                limits.upper(),
                OptionalDouble.empty(),
                LineResult.NOT_JUDGED,
                missing);
    }

    private static OptionalDouble resolve(Optional<Limit> limit, SupplyVoltage supply) {
        return limit.isPresent() ? limit.get().resolve(supply.volts()) : OptionalDouble.empty();
    }
}
