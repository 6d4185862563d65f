// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.Channel;
import org.dutywright.capture.ColumnChoice;
import org.dutywright.capture.ColumnHeading;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.StatedRate;
import org.dutywright.capture.TimeSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.csv.Layout.Kind;
import org.dutywright.units.ScaledUnit;
import org.dutywright.units.Unit;

/** Which columns of a table become time and channels. */
final class ColumnPlan {
    private final Layout layout;
    private final Optional<TimeColumn> time;
    private final List<ColumnChoice.Column> columns = new ArrayList<>();
    private final List<Integer> fileColumns = new ArrayList<>();
    private final Map<String, String> guessed = new LinkedHashMap<>();
    private final List<ColumnChoice.Chosen> chosen;
    private final OptionalDouble sampleRateHz;
    /** Rates that the time base does not rest on. */
    private final List<StatedRate> statedRates;

    private ColumnPlan(Path file, Layout layout, ReadSettings settings, List<StatedRate> ofFile)
            throws UnreadableException {
        this.layout = layout;
        time = TimeColumn.find(file, layout, settings.time());
        statedRates = new ArrayList<>(ofFile);
        sampleRateHz = time.isPresent() ? OptionalDouble.empty() : rate(settings, ofFile);
        if (time.isPresent() && settings.sampleRateHz().isPresent()) {
            statedRates.add(
                    new StatedRate("--sample-rate", settings.sampleRateHz().getAsDouble(), 0));
        }
        sayTime(settings);
        for (int column = 0; column < layout.width(); column++) {
            if (time.isEmpty() || time.get().column() != column) {
                take(column);
            }
        }
        if (columns.isEmpty()) {
            throw new UnreadableException(
                    file,
                    "line " + layout.firstDataLine(),
                    "the table has no column of values" + (time.isPresent() ? " beside the time column" : ""),
                    "export at least one channel");
        }
        chosen = ColumnChoice.choose(file, columns, settings);
        if (time.isEmpty() && sampleRateHz.isEmpty()) {
            throw new UnreadableException(
                    file,
                    "line " + layout.header().map(HeadRow::line).orElse(layout.firstDataLine()),
                    "no column of time was recognised",
                    "give the sample rate with --sample-rate HZ, or name the column of time stamps with --time-column");
        }
    }

    /**
     * Plans.
     *
     * @param stated the sample rates that the file states in words; the first one is used where nothing else says it
     * @throws UnreadableException if there is no time and no sample rate, no value, or not what the settings ask for
     */
    static ColumnPlan of(Path file, Layout layout, ReadSettings settings, List<StatedRate> stated)
            throws UnreadableException {
        return new ColumnPlan(file, layout, settings, stated);
    }

    private OptionalDouble rate(ReadSettings settings, List<StatedRate> ofFile) {
        if (settings.sampleRateHz().isPresent() || ofFile.isEmpty()) {
            return settings.sampleRateHz();
        }
        StatedRate first = ofFile.get(0);
        statedRates.remove(first);
        guessed.put("sample rate taken from", first.origin());
        return OptionalDouble.of(first.sampleRateHz());
    }

    private void sayTime(ReadSettings settings) {
        if (time.isPresent()) {
            TimeColumn found = time.get();
            guessed.put("time column", called(found.column()) + ", " + found.reason());
            guessed.put("time unit", found.unit());
            if (settings.sampleRateHz().isPresent()) {
                guessed.put("given sample rate", "not used, because there is a time column");
            }
        } else {
            guessed.put("time column", settings.time().deniesColumn() ? "none, as given" : "none");
        }
    }

    private String called(int column) {
        String text = layout.heading(column).text();
        return "column " + (column + 1) + (text.isEmpty() ? "" : " '" + text + "'");
    }

    private void take(int column) {
        ColumnHeading heading = layout.heading(column);
        Kind kind = layout.kinds().get(column);
        if (kind == Kind.EMPTY && heading.text().isEmpty()) {
            return;
        }
        if (kind != Kind.NUMBERS) {
            String why = switch (kind) {
                case EMPTY -> "empty";
                case SPARSE -> "mostly empty";
                case CLOCK -> "clock times";
                default -> "no numbers";
            };
            leaveOut(column, why);
        } else if (isAnotherTime(column, heading)) {
            leaveOut(column, "a second column of time");
        } else if (isIndex(column, heading)) {
            leaveOut(column, "counts the rows");
        } else {
            add(column, heading);
        }
    }

    private boolean isAnotherTime(int column, ColumnHeading heading) {
        return time.isPresent() && heading.isTime() && column > time.get().column();
    }

    private boolean isIndex(int column, ColumnHeading heading) {
        boolean named = heading.isIndex() || (heading.text().isEmpty() && column == 0);
        return named && TimeColumn.counts(layout, column) && layout.width() > 1;
    }

    private void leaveOut(int column, String why) {
        guessed.merge("columns left out", called(column) + ": " + why, (before, more) -> before + "; " + more);
    }

    private void add(int column, ColumnHeading heading) {
        String name = heading.name().isEmpty() ? "channel" + (columns.size() + 1) : heading.name();
        Optional<ScaledUnit> unit = heading.unit();
        String symbol = heading.baseUnit(Unit.VOLT.symbol());
        if (unit.isEmpty() && !heading.unknownUnit().isEmpty() && !symbol.isEmpty()) {
            guessed.merge(
                    "units not known",
                    called(column) + ": '" + heading.unknownUnit() + "', taken as V",
                    (before, more) -> before + "; " + more);
        }
        columns.add(new ColumnChoice.Column(
                heading.text(), name, symbol, unit.map(ScaledUnit::factor).orElse(1.0)));
        fileColumns.add(column);
    }

    List<Channel> channels() {
        return chosen.stream().map(ColumnChoice.Chosen::channel).toList();
    }

    /** Settings that plan the same. */
    ReadSettings asRead(ReadSettings settings) {
        TimeSettings found = time.map(it -> new TimeSettings(
                        Optional.of(it.designator(layout)),
                        it.clock() ? Optional.empty() : Optional.of(new ScaledUnit(Unit.SECOND, it.factor()))))
                .orElse(new TimeSettings(Optional.of(TimeSettings.NONE), Optional.empty()));
        return ColumnChoice.asRead(columns, chosen, settings)
                .withTime(found)
                .withSampleRate(sampleRateHz.isPresent() ? sampleRateHz : settings.sampleRateHz());
    }

    /** The column of the file that each channel comes from. */
    int[] channelColumns() {
        return chosen.stream().mapToInt(one -> fileColumns.get(one.column())).toArray();
    }

    /** The factor of each channel. */
    double[] channelFactors() {
        return chosen.stream().mapToDouble(ColumnChoice.Chosen::factor).toArray();
    }

    Optional<TimeColumn> time() {
        return time;
    }

    /** Empty if there is a time column. */
    OptionalDouble sampleRateHz() {
        return sampleRateHz;
    }

    /** Rates that were stated beside what the time base rests on. */
    List<StatedRate> statedRates() {
        return statedRates;
    }

    /** What was decided, for people. */
    Map<String, String> guessed() {
        return guessed;
    }
}
