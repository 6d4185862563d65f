// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.Channel;
import org.dutywright.capture.ColumnChoice;
import org.dutywright.capture.ColumnHeading;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Source;
import org.dutywright.capture.UnreadableException;
import org.dutywright.units.ScaledUnit;
import org.dutywright.units.Unit;

/** Makes a capture of a table that another program wrote. */
final class PlainTable {
    private static final String PANDAS_INDEX = "__index_level_";

    private final ArrowFile file;
    private final Map<String, String> guessed = new LinkedHashMap<>();
    private final List<ColumnChoice.Column> values = new ArrayList<>();
    private final List<Integer> indices = new ArrayList<>();
    private final List<String> leftOut = new ArrayList<>();
    private Optional<TableRows.Stamps> stamps = Optional.empty();

    private PlainTable(ArrowFile file) {
        this.file = file;
    }

    /** Reads it and copies its rows; the file may be closed then. */
    static Capture read(ArrowFile file, ReadSettings settings, long heapValues, Progress progress)
            throws UnreadableException, IOException {
        PlainTable table = new PlainTable(file);
        for (int i = 0; i < file.columns().size(); i++) {
            table.addColumn(i);
        }
        return table.read(settings, heapValues, progress);
    }

    private void addColumn(int index) {
        ArrowColumn column = file.columns().get(index);
        ColumnHeading heading = heading(column);
        boolean time = column.secondsPerUnit().isPresent() || heading.isTime() || heading.hasUnitOfTime();
        if (column.number().isEmpty()) {
            leftOut.add("'" + column.name() + "' (" + column.kind() + ")");
        } else if (time && stamps.isEmpty()) {
            double factor = column.secondsPerUnit()
                    .orElseGet(() -> heading.timeUnit().map(ScaledUnit::factor).orElse(1.0));
            stamps = Optional.of(new TableRows.Stamps(index, column.number().get(), factor, column.absolute()));
            guessed.put("time column", column.name());
            guessed.put("unit of time", factor + " s" + (column.absolute() ? ", from the first row on" : ""));
        } else if (time || heading.isIndex() || column.name().startsWith(PANDAS_INDEX)) {
            leftOut.add("'" + column.name() + "' (" + (time ? "time once more" : "counts rows") + ")");
        } else {
            values.add(new ColumnChoice.Column(
                    column.name(),
                    heading.name(),
                    heading.baseUnit(Unit.VOLT.symbol()),
                    heading.unit().map(ScaledUnit::factor).orElse(1.0)));
            indices.add(index);
        }
    }

    private static ColumnHeading heading(ArrowColumn column) {
        Map<String, String> metadata = column.metadata();
        String unit = metadata.getOrDefault(StoreMetadata.UNIT, metadata.getOrDefault(StoreMetadata.UNITS, ""));
        return ColumnHeading.of(column.name(), unit);
    }

    private Capture read(ReadSettings settings, long heapValues, Progress progress)
            throws UnreadableException, IOException {
        if (values.isEmpty()) {
            String others = leftOut.isEmpty() ? "" : "; not read: " + String.join(", ", leftOut);
            throw new UnreadableException(
                    file.path(), "", "holds no column of numbers" + others, "write whole or floating numbers");
        }
        OptionalDouble rate = stamps.isPresent() ? OptionalDouble.empty() : settings.sampleRateHz();
        if (stamps.isEmpty() && rate.isEmpty()) {
            throw UnreadableException.lacks(
                    file.path(),
                    "there is no column of time",
                    "say how many samples a second there are with --sample-rate, or name the column time_s");
        }
        if (!leftOut.isEmpty()) {
            guessed.put("columns left out", String.join(", ", leftOut));
        }
        List<ColumnChoice.Chosen> chosen = ColumnChoice.choose(file.path(), values, settings);
        List<Channel> channels =
                chosen.stream().map(ColumnChoice.Chosen::channel).toList();
        try (CaptureBuilder builder = rate.isPresent()
                ? CaptureBuilder.even(channels, 0, rate.getAsDouble(), heapValues)
                : CaptureBuilder.stamped(channels, heapValues)) {
            String sha256 = ContentCheck.sha256(file, progress);
            new TableRows(file, stamps, indices, chosen).copy(builder, progress);
            if (builder.leftOutCount() > 0) {
                guessed.put("rows left out", builder.leftOutCount() + ", because values are missing");
            }
            return builder.finish(new Source(file.path(), sha256), guessed, progress);
        }
    }
}
