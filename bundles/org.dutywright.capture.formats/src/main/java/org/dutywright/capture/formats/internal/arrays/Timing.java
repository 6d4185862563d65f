// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal.arrays;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.ColumnHeading;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.TimeSettings;
import org.dutywright.units.Dimension;
import org.dutywright.units.ScaledUnit;

/**
 * What counts the time of an array.
 *
 * @param stamps an array of time stamps, if there is one
 * @param factor seconds that 1 of it stands for
 * @param rateHz else the samples a second, empty if nothing says so
 * @param startSeconds instant of the first sample where a rate counts
 * @param origin what it was found in, for the user
 */
record Timing(Optional<NumberArray> stamps, double factor, OptionalDouble rateHz, double startSeconds, String origin) {
    private static final List<String> RATES = List.of(
            "fs",
            "samplerate",
            "samplingrate",
            "sampleratehz",
            "samplingratehz",
            "samplefrequency",
            "samplingfrequency",
            "samplespersecond",
            "rate");
    private static final List<String> INTERVALS = List.of(
            "dt",
            "deltat",
            "ts",
            "tinterval",
            "interval",
            "sampleinterval",
            "samplinginterval",
            "sampletime",
            "sampleperiod",
            "samplingperiod",
            "timestep",
            "timeincrement",
            "increment",
            "xincrement",
            "xincr",
            "xstep",
            "dx");
    private static final List<String> STARTS = List.of(
            "t0",
            "tstart",
            "starttime",
            "timestart",
            "startseconds",
            "start",
            "timeorigin",
            "xorigin",
            "xstart",
            "xzero",
            "x0");
    private static final List<String> TIME_UNITS = List.of("timeunit", "timeunits", "xunit", "xunits");
    private static final List<String> UNITS = List.of("unit", "units");

    private static final MathContext DIGITS = new MathContext(14);

    private static Timing none() {
        return new Timing(Optional.empty(), 1, OptionalDouble.empty(), 0, "");
    }

    boolean isKnown() {
        return stamps.isPresent() || rateHz.isPresent();
    }

    /** The heading of an array, with what is said of its unit. */
    static ColumnHeading heading(ArrayContents contents, String path, List<String> unitNames, boolean inherited) {
        Facts facts = contents.facts();
        Optional<Facts.Fact> unit = inherited ? facts.inherited(path, unitNames) : facts.own(path, unitNames);
        String said = unit.map(Facts.Fact::text).orElse("");
        int since = said.indexOf(" since ");
        return ColumnHeading.of(Facts.leafOf(path), since > 0 ? said.substring(0, since) : said);
    }

    /** Whether an array is named as one of time, or by the user as that. */
    static boolean isTime(ArrayContents contents, NumberArray array, TimeSettings said) {
        if (array.columns() != 1 || said.deniesColumn()) {
            return false;
        }
        ColumnHeading heading = heading(contents, array.path(), UNITS, false);
        return said.column()
                .map(wanted -> List.of(contents.shown(array.path()), heading.text(), heading.name())
                        .contains(wanted))
                .orElseGet(heading::isTime);
    }

    private static Timing ofStamps(ArrayContents contents, NumberArray stamps, TimeSettings given) {
        Optional<ScaledUnit> unit = given.unit()
                .or(() -> heading(contents, stamps.path(), UNITS, false).timeUnit())
                .or(() -> heading(contents, stamps.path(), TIME_UNITS, true).timeUnit());
        double factor = unit.map(ScaledUnit::factor).orElse(1.0);
        String said =
                "array " + contents.shown(stamps.path()) + ", in " + (factor == 1 ? "s" : "units of " + factor + " s");
        return new Timing(Optional.of(stamps), factor, OptionalDouble.empty(), 0, said);
    }

    /** Finds an array of time, the nearest one of as many rows, else a rate or a step. */
    static Timing find(ArrayContents contents, List<NumberArray> times, NumberArray array, ReadSettings settings) {
        OptionalDouble given = settings.sampleRateHz();
        Optional<Timing> stamped = stamps(contents, times, array, settings.time());
        if (stamped.isPresent()) {
            return stamped.get();
        }
        double start = start(contents, array);
        if (given.isPresent()) {
            return new Timing(Optional.empty(), 1, given, start, "");
        }
        return rate(contents, array)
                .map(found -> new Timing(Optional.empty(), 1, OptionalDouble.of(found.hertz()), start, found.origin()))
                .orElse(none());
    }

    private static Optional<Timing> stamps(
            ArrayContents contents, List<NumberArray> times, NumberArray array, TimeSettings said) {
        List<NumberArray> fitting =
                times.stream().filter(time -> time.rows() == array.rows()).toList();
        for (String group = array.path(); !group.isEmpty(); ) {
            group = Facts.groupOf(group);
            for (NumberArray time : fitting) {
                if (Facts.groupOf(time.path()).equals(group)) {
                    return Optional.of(ofStamps(contents, time, said));
                }
            }
        }
        return fitting.size() == 1 ? Optional.of(ofStamps(contents, fitting.get(0), said)) : Optional.empty();
    }

    private record Rate(double hertz, String origin) {}

    private static Optional<Rate> rate(ArrayContents contents, NumberArray array) {
        Facts facts = contents.facts();
        return facts.inherited(array.path(), RATES)
                .flatMap(fact -> hertz(contents, fact, Dimension.FREQUENCY))
                .or(() ->
                        facts.inherited(array.path(), INTERVALS).flatMap(fact -> hertz(contents, fact, Dimension.TIME)))
                .or(() -> facts.only(RATES).flatMap(fact -> hertz(contents, fact, Dimension.FREQUENCY)))
                .or(() -> facts.only(INTERVALS).flatMap(fact -> hertz(contents, fact, Dimension.TIME)));
    }

    private static Optional<Rate> hertz(ArrayContents contents, Facts.Fact fact, Dimension dimension) {
        double value = fact.number() * factor(contents, fact, dimension);
        double exact = dimension == Dimension.TIME ? 1 / value : value;
        if (!fact.isNumber() || !(exact > 0) || !Double.isFinite(exact)) {
            return Optional.empty();
        }
        // units and the division leave an error in the last digits: 20 us are 50000 Hz, not 50000.00000000001
        double hertz = new BigDecimal(exact).round(DIGITS).doubleValue();
        String place = fact.place().isEmpty() ? fact.name() : fact.place() + "/" + fact.name();
        return Optional.of(new Rate(hertz, hertz + " Hz, from " + contents.shown(place)));
    }

    private static double factor(ArrayContents contents, Facts.Fact fact, Dimension dimension) {
        Facts facts = contents.facts();
        Optional<ScaledUnit> unit = facts.unitOf(fact);
        if (unit.isEmpty() && dimension == Dimension.TIME) {
            unit = facts.inherited(fact.place() + "/" + fact.name(), TIME_UNITS)
                    .flatMap(text -> ScaledUnit.parse(text.text()));
        }
        return unit.filter(found -> found.unit().dimension() == dimension)
                .map(ScaledUnit::factor)
                .orElse(1.0);
    }

    private static double start(ArrayContents contents, NumberArray array) {
        return contents.facts()
                .inherited(array.path(), STARTS)
                .filter(Facts.Fact::isNumber)
                .map(fact -> fact.number() * factor(contents, fact, Dimension.TIME))
                .orElse(0.0);
    }
}
