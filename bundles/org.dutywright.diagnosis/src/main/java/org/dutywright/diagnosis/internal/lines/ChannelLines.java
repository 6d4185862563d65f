// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.Progress;
import org.dutywright.diagnosis.CheckSettings;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.LineResult;
import org.dutywright.diagnosis.Position;
import org.dutywright.diagnosis.internal.lines.LineJudge.Limits;
import org.dutywright.diagnosis.internal.lines.LineJudge.Value;
import org.dutywright.diagnosis.internal.lines.RecordingFitness.Aspect;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.StateLevels;
import org.dutywright.pulse.Statistic;
import org.dutywright.pulse.Uncertain;
import org.dutywright.sensor.Sensor;
import org.dutywright.sensor.Sensor.Duty;
import org.dutywright.sensor.Sensor.Range;
import org.dutywright.sensor.Sensor.SensorChannel;

/** The lines of one channel of the sensor, whose name they carry. */
final class ChannelLines {
    private static final String VOLT = "V";

    private final SensorChannel channel;
    private final ChannelMeasurement measured;
    private final LineJudge judge;
    private final RecordingFitness fitness;
    private final SupplyVoltage supply;
    private final Optional<Position> position;
    private final String unusable;
    private final List<Line> lines = new ArrayList<>();

    private ChannelLines(
            Sensor sensor,
            SensorChannel channel,
            ChannelMeasurement measured,
            RecordingFitness fitness,
            SupplyVoltage supply,
            CheckSettings settings) {
        this.channel = channel;
        this.measured = measured;
        this.judge = new LineJudge(sensor.decision());
        this.fitness = fitness;
        this.supply = supply;
        this.position = settings.position();
        this.unusable = SignalState.unusable(measured);
    }

    static List<Line> of(
            Sensor sensor,
            SensorChannel channel,
            ChannelMeasurement measured,
            RecordingFitness fitness,
            SupplyVoltage supply,
            CheckSettings settings,
            Progress progress)
            throws IOException {
        ChannelLines made = new ChannelLines(sensor, channel, measured, fitness, supply, settings);
        made.lines.add(SignalState.line(made.item("signal"), measured, fitness));
        channel.frequency().ifPresent(made::frequency);
        channel.lowLevel().ifPresent(range -> made.level("lowLevel", range, true));
        channel.highLevel().ifPresent(range -> made.level("highLevel", range, false));
        channel.transitionMaxSeconds().ifPresent(made::transitions);
        if (channel.duty().isPresent()) {
            made.duty(channel.duty().get(), progress);
        }
        made.lines.addAll(EventLines.of(sensor, channel, measured, fitness));
        return made.lines;
    }

    /** The same lines where the capture has nothing to judge them on. */
    static List<Line> missing(Sensor sensor, SensorChannel channel, String reason) {
        List<Line> lines = new ArrayList<>();
        lines.add(LineJudge.state(channel.name() + ".signal", LineResult.INCONCLUSIVE, reason));
        Limits open = new Limits(OptionalDouble.empty(), OptionalDouble.empty(), "");
        for (ItemNames.Item item : ItemNames.limits(channel)) {
            lines.add(LineJudge.notJudged(item.name(), item.unit(), open, reason));
        }
        lines.addAll(EventLines.missing(sensor, channel, reason));
        return lines;
    }

    private String item(String what) {
        return channel.name() + "." + what;
    }

    private void frequency(Range range) {
        statisticLine("frequency", "Hz", range, statistic("frequency"));
    }

    private void statisticLine(String what, String unit, Range range, Optional<Statistic> statistic) {
        ResolvedLimits resolved = ResolvedLimits.of(range, supply);
        if (!unusable.isEmpty() || statistic.isEmpty()) {
            lines.add(LineJudge.notJudged(item(what), unit, resolved.limits(), absence(what)));
            return;
        }
        Value value = new Value(
                statistic.get().mean(),
                statistic.get().u(),
                unit,
                statistic.get().budget());
        lines.add(resolved.judge(judge, item(what), value, worst(Aspect.RATE)));
    }

    private void level(String what, Range range, boolean low) {
        ResolvedLimits resolved = ResolvedLimits.of(range, supply);
        Optional<StateLevels> levels = measured.levels();
        String unit = measured.channel().unit();
        String reason = "";
        if (!unusable.isEmpty()) {
            reason = unusable;
        } else if (levels.isEmpty() && worst(Aspect.LEVELS).isPresent()) {
            reason = LineJudge.unfit(worst(Aspect.LEVELS).orElseThrow());
        } else if (levels.isEmpty()) {
            reason = "the channel has no two state levels";
        } else if (!unit.equals(VOLT)) {
            reason = "the channel is not in volts" + (unit.isEmpty() ? "" : " but in " + unit);
        }
        if (!reason.isEmpty()) {
            lines.add(LineJudge.notJudged(item(what), VOLT, resolved.limits(), reason));
            return;
        }
        Uncertain level =
                low ? levels.orElseThrow().low() : levels.orElseThrow().high();
        Value value = new Value(level.value(), level.u(), VOLT, level.budget());
        lines.add(resolved.judge(judge, item(what), value, worst(Aspect.LEVELS)));
    }

    private void transitions(double maxSeconds) {
        transition("transition.rise", maxSeconds);
        transition("transition.fall", maxSeconds);
    }

    private void transition(String what, double maxSeconds) {
        Limits limits = new Limits(OptionalDouble.empty(), OptionalDouble.of(maxSeconds), "");
        Optional<Uncertain> median = single(what);
        if (!unusable.isEmpty() || median.isEmpty()) {
            lines.add(LineJudge.notJudged(item(what), "s", limits, absence(what)));
            return;
        }
        Value value = new Value(
                median.get().value(), median.get().u(), "s", median.get().budget());
        lines.add(judge.judged(item(what), value, limits, worst(Aspect.TRANSITIONS), ""));
    }

    private void duty(Duty duty, Progress progress) throws IOException {
        Optional<DutyBand> band = DutyBand.allowed(duty);
        if (band.isPresent()) {
            everyCycle(band.get(), progress);
        }
        if (duty.tolerancePercent().isPresent()) {
            endPoint(
                    Position.RELEASED,
                    duty.releasedPercent(),
                    duty.tolerancePercent().getAsDouble());
            endPoint(
                    Position.PRESSED,
                    duty.pressedPercent(),
                    duty.tolerancePercent().getAsDouble());
        }
    }

    private void everyCycle(DutyBand band, Progress progress) throws IOException {
        Limits limits = new Limits(band.lowerPercent(), band.upperPercent(), "");
        Optional<Statistic> statistic = statistic("duty");
        Optional<DutyScan.Found> found = unusable.isEmpty() && statistic.isPresent()
                ? DutyScan.scan(measured.cycles(), band.lowerOrInfinity(), band.upperOrInfinity(), progress)
                : Optional.empty();
        if (found.isEmpty()) {
            lines.add(LineJudge.notJudged(item("duty"), "%", limits, absence("duty")));
            return;
        }
        DutyScan.Found scan = found.get();
        Budget budget = statistic
                .orElseThrow()
                .budget()
                .and(List.of(Component.typeA(
                        "scatter of single cycles", scan.cycleScatterPercent(), Double.POSITIVE_INFINITY)));
        double u =
                Math.hypot(scan.cycleScatterPercent(), statistic.orElseThrow().u());
        String fact = "worst cycle starts at " + Say.instant(scan.worst().startSeconds()) + ", " + scan.outside()
                + " of " + scan.undisturbed() + " undisturbed cycles outside";
        Value value = new Value(scan.worst().dutyPercent(), u, "%", budget);
        lines.add(judge.judged(item("duty"), value, limits, worst(Aspect.TIMING), fact));
    }

    private void endPoint(Position end, double nominalPercent, double tolerancePercent) {
        String what = "duty." + end.word();
        Limits limits = new Limits(
                OptionalDouble.of(nominalPercent - tolerancePercent),
                OptionalDouble.of(nominalPercent + tolerancePercent),
                "");
        Optional<Statistic> statistic = statistic("duty");
        String reason = "";
        if (position.isEmpty()) {
            reason = "it is not known whether the sensor was " + end.word() + "; say so with --position";
        } else if (position.get() != end) {
            reason = "the sensor was " + position.get().word();
        } else if (!unusable.isEmpty() || statistic.isEmpty()) {
            reason = absence("duty");
        }
        if (!reason.isEmpty()) {
            lines.add(LineJudge.notJudged(item(what), "%", limits, reason));
            return;
        }
        Statistic duty = statistic.orElseThrow();
        String fact = "cycles range from " + Say.amount(duty.min(), "%") + " to " + Say.amount(duty.max(), "%");
        Value value = new Value(duty.mean(), duty.u(), "%", duty.budget());
        lines.add(judge.judged(item(what), value, limits, worst(Aspect.TIMING), fact));
    }

    private Optional<Fitness> worst(Aspect aspect) {
        return fitness.worst(measured.channel().name(), aspect);
    }

    private Optional<Statistic> statistic(String id) {
        return outcome(id).filter(Outcome.OfCycles.class::isInstance).map(it -> ((Outcome.OfCycles) it).statistic());
    }

    private Optional<Uncertain> single(String id) {
        return outcome(id).filter(Outcome.Single.class::isInstance).map(it -> ((Outcome.Single) it).value());
    }

    private Optional<Outcome> outcome(String id) {
        return Optional.ofNullable(measured.results().get(id)).map(Result::outcome);
    }

    private String absence(String id) {
        if (!unusable.isEmpty()) {
            return unusable;
        }
        return outcome(id)
                .filter(Outcome.Absent.class::isInstance)
                .map(it -> ((Outcome.Absent) it).reason())
                .orElse("nothing was measured for it");
    }
}
