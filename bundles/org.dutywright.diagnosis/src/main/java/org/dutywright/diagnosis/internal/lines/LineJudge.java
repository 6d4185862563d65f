// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.diagnosis.Conformity;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.LineResult;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Fitness;
import org.dutywright.sensor.Sensor.Decision;

/** Makes lines: judged by the sensor's rule, counted, or not judged with a reason. */
final class LineJudge {
    private final Decision decision;

    LineJudge(Decision decision) {
        this.decision = decision;
    }

    /** A measured value with its standard uncertainty, and what that is made of, in a base unit. */
    record Value(double measured, double u, String unit, Budget budget) {}

    /** Limits in the unit of the value, and what to say about how they came about, empty if nothing. */
    record Limits(OptionalDouble lower, OptionalDouble upper, String remark) {}

    Line judged(String item, Value value, Limits limits, Optional<Fitness> fitness, String fact) {
        if (fitness.isPresent() && fitness.get().grade() == Fitness.Grade.UNFIT) {
            return notJudged(item, value.unit(), limits, unfit(fitness.get()));
        }
        if (!(value.u() >= 0) || Double.isInfinite(value.u()) || !Double.isFinite(value.measured())) {
            return notJudged(item, value.unit(), limits, "no uncertainty is known for the measured value");
        }
        LineResult decided = Conformity.decide(value.measured(), value.u(), limits.lower(), limits.upper(), decision);
        LineResult result = fitness.isPresent() ? LineResult.INCONCLUSIVE : decided;
        String reason = fitness.map(LineJudge::poor).orElseGet(() -> reason(decided, value, limits, fact));
        return new Line(
                item,
                OptionalDouble.of(value.measured()),
                OptionalDouble.of(value.u()),
                value.unit(),
                limits.lower(),
                limits.upper(),
                OptionalDouble.of(Conformity.probability(value.measured(), value.u(), limits.lower(), limits.upper())),
                result,
                reason,
                value.budget());
    }

    Line counted(String item, long count, OptionalDouble upper, Optional<Fitness> fitness) {
        OptionalDouble measured = OptionalDouble.of((double) count);
        LineResult result = LineResult.PASS;
        String reason = "";
        if (upper.isEmpty()) {
            result = LineResult.NOT_JUDGED;
            reason = "the sensor text ignores events of this kind";
        } else if (fitness.isPresent() && fitness.get().grade() == Fitness.Grade.UNFIT) {
            return notJudged(item, "", new Limits(OptionalDouble.empty(), upper, ""), unfit(fitness.get()));
        } else if (fitness.isPresent() && !(RecordingFitness.onlyHides(fitness.get()) && count > upper.getAsDouble())) {
            result = LineResult.INCONCLUSIVE;
            reason = poor(fitness.get());
        } else if (count > upper.getAsDouble()) {
            result = LineResult.FAIL;
            reason = String.format(Locale.ROOT, "%d counted, %.0f allowed", count, upper.getAsDouble());
        }
        return new Line(
                item,
                measured,
                OptionalDouble.empty(),
                "",
                OptionalDouble.empty(),
                upper,
                OptionalDouble.empty(),
                result,
                reason);
    }

    static Line notJudged(String item, String unit, Limits limits, String reason) {
        OptionalDouble none = OptionalDouble.empty();
        return new Line(item, none, none, unit, limits.lower(), limits.upper(), none, LineResult.NOT_JUDGED, reason);
    }

    static Line state(String item, LineResult result, String reason) {
        OptionalDouble none = OptionalDouble.empty();
        return new Line(item, none, none, "", none, none, none, result, reason);
    }

    private String reason(LineResult result, Value value, Limits limits, String fact) {
        if (result == LineResult.PASS) {
            return "";
        }
        String where = where(value, limits);
        String guarded = decision.rule() == Decision.Rule.SIMPLE ? "" : guardReason(result, value);
        return join(join(where + guarded, fact), limits.remark());
    }

    private static String where(Value value, Limits limits) {
        double y = value.measured();
        if (limits.upper().isPresent() && y > limits.upper().getAsDouble()) {
            return "above the upper limit by " + Say.amount(y - limits.upper().getAsDouble(), value.unit());
        }
        if (limits.lower().isPresent() && y < limits.lower().getAsDouble()) {
            return "below the lower limit by " + Say.amount(limits.lower().getAsDouble() - y, value.unit());
        }
        return "inside the limits";
    }

    private String guardReason(LineResult result, Value value) {
        String guard = Say.amount(decision.coverage() * value.u(), value.unit());
        if (result == LineResult.INCONCLUSIVE) {
            return ", but nearer to a limit than the guard band of " + guard;
        }
        return " with a guard band of " + guard;
    }

    static String join(String first, String second) {
        return first.isEmpty() || second.isEmpty() ? first + second : first + "; " + second;
    }

    static String poor(Fitness fitness) {
        return "the recording is poor for this: " + fitness.reason();
    }

    static String unfit(Fitness fitness) {
        return "the recording cannot carry this: " + fitness.reason();
    }
}
