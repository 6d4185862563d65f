// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.numpy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.Channel;
import org.dutywright.capture.ColumnChoice;
import org.dutywright.capture.ColumnHeading;
import org.dutywright.capture.CountScale;
import org.dutywright.capture.PlacedSamples;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Source;
import org.dutywright.capture.TimeSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.ByteSource;
import org.dutywright.units.ScaledUnit;
import org.dutywright.units.Unit;

/** Makes a capture of arrays whose columns lie side by side. */
final class ArrayTable {
    private static final Set<String> RATE_NAMES =
            Set.of("fs", "samplerate", "sample_rate", "sampleratehz", "sample_rate_hz", "rate");
    private static final int PLACED_BLOCK_BYTES = 1 << 18;
    private static final int ROWS_TO_SEE_TIME = 1000;

    private final Path file;
    private final Map<String, ArrayData> arrays = new LinkedHashMap<>();
    private final List<ColumnChoice.Column> columns = new ArrayList<>();
    private final List<ArrayColumn> places = new ArrayList<>();
    private final List<ColumnChoice.Chosen> chosen;
    private final Map<String, String> guessed = new LinkedHashMap<>();
    private Optional<ArrayColumn> time = Optional.empty();
    private double timeFactor = 1;
    private final TimeSettings timeSaid;
    private final ReadSettings settings;
    private String timeName = TimeSettings.NONE;
    private OptionalDouble rateHz;
    private long rows = Long.MAX_VALUE;

    ArrayTable(Path file, Map<String, ArrayData> all, ReadSettings settings) throws UnreadableException, IOException {
        this.file = file;
        rateHz = settings.sampleRateHz();
        this.settings = settings;
        timeSaid = settings.time();
        for (Map.Entry<String, ArrayData> entry : all.entrySet()) {
            if (entry.getValue().header().rows() > 1
                    || !entry.getValue().header().fields().isEmpty()) {
                arrays.put(entry.getKey(), entry.getValue());
            } else {
                single(entry.getKey(), entry.getValue());
            }
        }
        for (Map.Entry<String, ArrayData> entry : arrays.entrySet()) {
            take(entry.getKey(), entry.getValue());
        }
        if (columns.isEmpty()) {
            throw new UnreadableException(file, "", "holds no array of samples", "save one value a sample and channel");
        }
        checkRows();
        checkTime(settings);
        chosen = ColumnChoice.choose(file, columns, settings);
        if (chosen.size() > ArrayData.MOST_COLUMNS) {
            throw UnreadableException.lacks(file, "has " + chosen.size() + " channels", "pick some with --channel");
        }
    }

    private void single(String name, ArrayData array) throws IOException {
        String plain = name.toLowerCase(Locale.ROOT).strip();
        double value = 0;
        if (RATE_NAMES.contains(plain) && array.rows() == 1 && array.columns() == 1) {
            double[][] one = new double[1][1];
            array.read(0, 1, one);
            value = one[0][0];
        }
        if (value > 0 && Double.isFinite(value) && rateHz.isEmpty()) {
            rateHz = OptionalDouble.of(value);
            guessed.put("sample rate found", "in the array " + name);
        } else {
            guessed.merge("arrays not used", name, (before, more) -> before + ", " + more);
        }
    }

    private void take(String name, ArrayData array) {
        array.cutOff().ifPresent(said -> guessed.put("length" + (name.isEmpty() ? "" : " of " + name), said));
        rows = Math.min(rows, array.rows());
        List<FieldList.Field> fields = array.header().fields();
        if (fields.isEmpty() && !(array.columns() == 1 && isTime(name, new ArrayColumn(array, 0)))) {
            for (int i = 0; i < array.columns(); i++) {
                String number = array.columns() == 1 ? "" : Integer.toString(i + 1);
                add(ColumnHeading.of(name, ""), number, new ArrayColumn(array, i));
            }
        }
        for (int i = 0; i < fields.size(); i++) {
            ArrayColumn place = new ArrayColumn(array, i);
            if (!isTime(fields.get(i).name(), place)) {
                add(ColumnHeading.of(fields.get(i).name(), ""), "", place);
            }
        }
    }

    /** Takes a column as time if it is the first that is named so, or the one that the user named. */
    private boolean isTime(String name, ArrayColumn place) {
        ColumnHeading heading = ColumnHeading.of(name, "");
        Optional<String> wanted = timeSaid.column();
        boolean named = wanted.isPresent()
                ? wanted.get().equals(heading.text()) || wanted.get().equals(heading.name())
                : heading.isTime();
        if (time.isPresent() || timeSaid.deniesColumn() || !named) {
            return false;
        }
        Optional<ScaledUnit> unit = timeSaid.unit().or(heading::timeUnit);
        time = Optional.of(place);
        timeName = heading.text();
        timeFactor = unit.map(ScaledUnit::factor).orElse(1.0);
        guessed.put("time column", name + ", in " + (unit.isEmpty() ? "s" : "units of " + timeFactor + " s"));
        return true;
    }

    private void add(ColumnHeading heading, String number, ArrayColumn place) {
        boolean isFloat = place.array().header().typeOf(place.index()).isFloat();
        String unit = heading.baseUnit(isFloat ? Unit.VOLT.symbol() : "");
        double factor = heading.unit().map(ScaledUnit::factor).orElse(1.0);
        String made = number.isEmpty() ? "channel" + (columns.size() + 1) : "channel";
        String base = heading.name().isEmpty() ? made : heading.name();
        columns.add(new ColumnChoice.Column(heading.text() + number, base + number, unit, factor));
        places.add(place);
    }

    private void checkRows() throws UnreadableException {
        for (Map.Entry<String, ArrayData> entry : arrays.entrySet()) {
            long declared = entry.getValue().header().rows();
            long first = arrays.values().iterator().next().header().rows();
            if (declared != first) {
                throw new UnreadableException(
                        file,
                        "",
                        "array '" + entry.getKey() + "' has " + declared + " rows and the first one " + first,
                        "save arrays of one recording, of equal length");
            }
        }
    }

    private void checkTime(ReadSettings settings) throws UnreadableException, IOException {
        if (time.isEmpty() && timeSaid.column().isPresent() && !timeSaid.deniesColumn()) {
            lookByNumber(timeSaid.column().get());
        }
        if (time.isPresent()) {
            if (settings.sampleRateHz().isPresent()) {
                guessed.put("given sample rate", "not used, because there is an array of time");
            }
            rateHz = OptionalDouble.empty();
        } else if (rateHz.isEmpty()
                && !timeSaid.deniesColumn()
                && columns.size() > 1
                && places.get(0).rises(ROWS_TO_SEE_TIME)) {
            takeTime(0, "the first, in s, because it rises throughout");
        } else if (rateHz.isEmpty()) {
            throw new UnreadableException(
                    file, "", "holds no time", "give the sample rate with --sample-rate HZ, or save an array named t");
        }
    }

    private void lookByNumber(String wanted) throws UnreadableException {
        for (int i = 0; i < columns.size() && columns.size() > 1; i++) {
            if (wanted.equals("#" + (i + 1))) {
                takeTime(i, wanted + ", as given");
                return;
            }
        }
        throw UnreadableException.lacks(
                file,
                "there is no column '" + wanted + "' of time",
                "its columns are "
                        + String.join(
                                ", ",
                                columns.stream().map(ColumnChoice.Column::name).toList()));
    }

    private void takeTime(int column, String said) {
        time = Optional.of(places.remove(column));
        timeName = "#" + (column + 1);
        columns.remove(column);
        timeFactor = timeSaid.unit().map(ScaledUnit::factor).orElse(1.0);
        guessed.put("time column", said);
    }

    Capture read(Source source, Progress progress) throws UnreadableException, IOException {
        List<Channel> channels =
                chosen.stream().map(ColumnChoice.Chosen::channel).toList();
        try (CaptureBuilder builder = time.isPresent()
                ? CaptureBuilder.stamped(channels)
                : CaptureBuilder.even(channels, 0, rateHz.getAsDouble())) {
            new ArrayRows(file, places, time, timeFactor, chosen).read(rows, builder, progress);
            return finish(builder, source, progress);
        }
    }

    /** Whether rows come evenly, without an array of time. */
    boolean isEven() {
        return time.isEmpty();
    }

    /** Reads an even table of one array where it lies in the file. */
    Capture readPlaced(ByteSource source, Progress progress) throws UnreadableException, IOException {
        ArrayData array = places.get(0).array();
        List<PlacedSamples.Column> placed = chosen.stream()
                .map(one -> array.place(places.get(one.column()).index(), one.factor()))
                .toList();
        List<Channel> channels =
                chosen.stream().map(ColumnChoice.Chosen::channel).toList();
        try (CaptureBuilder builder = CaptureBuilder.even(channels, 0, rateHz.getAsDouble())) {
            builder.place(PlacedSamples.open(file, rows, placed));
            int blockRows = Math.max(1, PLACED_BLOCK_BYTES / array.rowBytes());
            for (long left = rows; left > 0; left -= blockRows) {
                int here = (int) Math.min(blockRows, left);
                // while these bytes are at hand, their rows are summed up
                source.skip((long) here * array.rowBytes());
                builder.takePlaced(here);
            }
            return finish(builder, source.source(), progress);
        }
    }

    private ReadSettings asRead() {
        Optional<ScaledUnit> unit = time.map(found -> new ScaledUnit(Unit.SECOND, timeFactor));
        return ColumnChoice.asRead(columns, chosen, settings)
                .withTime(new TimeSettings(Optional.of(timeName), unit))
                .withSampleRate(time.isPresent() ? settings.sampleRateHz() : rateHz);
    }

    private Capture finish(CaptureBuilder builder, Source source, Progress progress)
            throws UnreadableException, IOException {
        sayCounts(builder);
        if (builder.leftOutCount() > 0) {
            guessed.put("rows left out", builder.leftOutCount() + ", because they hold no number");
        }
        builder.asRead(asRead());
        return builder.finish(source, guessed, progress);
    }

    private void sayCounts(CaptureBuilder builder) {
        double[] scales =
                chosen.stream().mapToDouble(ColumnChoice.Chosen::factor).toArray();
        for (int i = 0; i < scales.length; i++) {
            boolean counts = places.get(chosen.get(i).column())
                    .array()
                    .header()
                    .typeOf(places.get(chosen.get(i).column()).index())
                    .isCount();
            if (counts && Double.isFinite(scales[i]) && scales[i] != 0) {
                builder.counts(i, new CountScale(scales[i], 0));
            }
        }
    }
}
