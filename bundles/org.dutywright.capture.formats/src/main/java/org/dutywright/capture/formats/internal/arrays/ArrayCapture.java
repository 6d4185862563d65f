// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal.arrays;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.Channel;
import org.dutywright.capture.ColumnChoice;
import org.dutywright.capture.ColumnHeading;
import org.dutywright.capture.CountScale;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Source;
import org.dutywright.capture.TimeSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.units.ScaledUnit;
import org.dutywright.units.Unit;

/** Makes a capture of the arrays of one recording in a file. */
public final class ArrayCapture {
    private static final int ROWS_TO_SEE_TIME = 1000;
    private static final List<String> UNITS = List.of("unit", "units", "yunit", "yunits");

    private final ArrayContents contents;
    private final Recording recording;
    private final ReadSettings settings;
    private final List<ColumnChoice.Column> columns = new ArrayList<>();
    private final List<ArrayRows.Place> places = new ArrayList<>();
    private final Map<String, String> guessed = new LinkedHashMap<>();
    private final List<ColumnChoice.Chosen> chosen;
    private Optional<ArrayRows.Place> time;
    private double timeFactor;
    private String timeName;

    private ArrayCapture(ArrayContents contents, Recording recording, ReadSettings settings)
            throws UnreadableException, IOException {
        this.contents = contents;
        this.recording = recording;
        this.settings = settings;
        time = recording.timing().stamps().map(stamps -> place(ScaledArray.of(contents, stamps), 0));
        timeFactor = recording.timing().factor();
        timeName = recording
                .timing()
                .stamps()
                .map(stamps -> contents.shown(stamps.path()))
                .orElse(TimeSettings.NONE);
        List<String> names = recording.names();
        for (int i = 0; i < names.size(); i++) {
            take(recording.arrays().get(i), names.get(i));
        }
        findTime();
        chosen = ColumnChoice.choose(contents.file(), columns, settings);
        if (chosen.size() > NumberArray.MOST_COLUMNS) {
            throw UnreadableException.lacks(
                    contents.file(), "has " + chosen.size() + " channels", "pick some with --channel");
        }
    }

    /**
     * Makes the capture.
     *
     * @param source the file, whose sum is known already
     * @throws UnreadableException if no arrays make a recording
     */
    public static Capture read(ArrayContents contents, ReadSettings settings, Source source, Progress progress)
            throws UnreadableException, IOException {
        List<Recording> recordings = Recording.in(contents, settings);
        if (recordings.isEmpty()) {
            String leftOut = contents.leftOutText();
            throw new UnreadableException(
                    contents.file(),
                    "",
                    "holds no array of samples" + (leftOut.isEmpty() ? "" : ", only " + leftOut),
                    "export the channels as arrays of plain numbers");
        }
        ArrayCapture capture = pick(contents, recordings, settings);
        capture.sayUnused();
        return capture.read(source, progress);
    }

    /** The first recording, or the first that has the channels that are asked for. */
    private static ArrayCapture pick(ArrayContents contents, List<Recording> recordings, ReadSettings settings)
            throws UnreadableException, IOException {
        if (!settings.channels().isEmpty()) {
            for (Recording recording : recordings.subList(1, recordings.size())) {
                try {
                    new ArrayCapture(contents, recordings.get(0), settings);
                    break;
                } catch (UnreadableException first) {
                    Optional<ArrayCapture> other = tried(contents, recording, settings);
                    if (other.isPresent()) {
                        return other.get();
                    }
                }
            }
        }
        return new ArrayCapture(contents, recordings.get(0), settings);
    }

    private static Optional<ArrayCapture> tried(ArrayContents contents, Recording recording, ReadSettings settings)
            throws IOException {
        try {
            return Optional.of(new ArrayCapture(contents, recording, settings));
        } catch (UnreadableException e) {
            return Optional.empty();
        }
    }

    private static ArrayRows.Place place(ScaledArray array, int column) {
        return new ArrayRows.Place(array, column);
    }

    private void take(NumberArray array, String name) {
        ScaledArray scaled = ScaledArray.of(contents, array);
        ColumnHeading heading = Timing.heading(contents, array.path(), UNITS, true);
        String leaf = Facts.leafOf(array.path());
        String shown = contents.shown(
                name.endsWith(leaf) ? name.substring(0, name.length() - leaf.length()) + heading.name() : name);
        boolean whole = array.kind() == NumberArray.Kind.COUNT || array.kind() == NumberArray.Kind.WHOLE;
        boolean unknown =
                !heading.unknownUnit().isEmpty() && !heading.unknownUnit().equals(ColumnHeading.NO_UNIT);
        if (heading.unit().isEmpty() && unknown) {
            say(
                    "units not known",
                    contents.shown(array.path()) + ": '" + heading.unknownUnit() + "'"
                            + (whole && scaled.scale().isEmpty() ? "" : ", taken as V"));
        }
        scaled.scale()
                .ifPresent(found -> say(
                        "scale found",
                        contents.shown(array.path()) + ": " + found.scale() + " and offset " + found.offset()));
        String unit = heading.baseUnit(whole && scaled.scale().isEmpty() ? "" : Unit.VOLT.symbol());
        double factor = heading.unit().map(ScaledUnit::factor).orElse(1.0);
        for (int i = 0; i < array.columns(); i++) {
            String number = array.columns() == 1 ? "" : Integer.toString(i + 1);
            columns.add(new ColumnChoice.Column(contents.shown(array.path()) + number, shown + number, unit, factor));
            places.add(place(scaled, i));
        }
    }

    private void say(String what, String text) {
        guessed.merge(what, text, (before, more) -> before + "; " + more);
    }

    private void findTime() throws UnreadableException, IOException {
        Timing timing = recording.timing();
        Optional<String> wanted =
                settings.time().column().filter(column -> !settings.time().deniesColumn());
        if (timing.stamps().isPresent()) {
            guessed.put("time column", timing.origin());
            if (settings.sampleRateHz().isPresent()) {
                guessed.put("given sample rate", "not used, because there is an array of time");
            }
        } else if (wanted.isPresent()) {
            takeTime(numbered(wanted.get()), wanted.get() + ", as given");
        } else if (timing.rateHz().isPresent()) {
            if (!timing.origin().isEmpty()) {
                guessed.put("sample rate found", timing.origin());
            }
        } else if (columns.size() > 1 && !settings.time().deniesColumn() && rises(places.get(0))) {
            takeTime(0, "the first, in s, because it rises throughout");
        } else {
            throw new UnreadableException(
                    contents.file(),
                    "",
                    "holds nothing that says the time of array "
                            + contents.shown(recording.arrays().get(0).path()),
                    "give the sample rate with --sample-rate HZ, or export an array named t or a number named fs");
        }
    }

    private int numbered(String wanted) throws UnreadableException {
        for (int i = 0; i < columns.size() && columns.size() > 1; i++) {
            if (wanted.equals("#" + (i + 1)) || wanted.equals(columns.get(i).heading())) {
                return i;
            }
        }
        List<String> names = columns.stream().map(ColumnChoice.Column::name).toList();
        throw UnreadableException.lacks(
                contents.file(),
                "there is no column '" + wanted + "' of time",
                "its columns are " + String.join(", ", names));
    }

    private void takeTime(int column, String said) {
        time = Optional.of(places.remove(column));
        columns.remove(column);
        timeFactor = settings.time().unit().map(ScaledUnit::factor).orElse(1.0);
        timeName = "#" + (column + 1);
        guessed.put("time column", said);
    }

    /** Settings that read the same again, with all that was decided. */
    private ReadSettings asRead() {
        Optional<ScaledUnit> unit = time.map(found -> new ScaledUnit(Unit.SECOND, timeFactor));
        return ColumnChoice.asRead(columns, chosen, settings)
                .withTime(new TimeSettings(Optional.of(timeName), unit))
                .withSampleRate(
                        time.isPresent()
                                ? settings.sampleRateHz()
                                : recording.timing().rateHz());
    }

    /** Whether each of the first rows is above the one before. */
    private boolean rises(ArrayRows.Place place) throws UnreadableException, IOException {
        int count = (int) Math.min(ROWS_TO_SEE_TIME, place.array().array().heldRows());
        double[][] block = new double[place.array().array().columns()][Math.max(0, count)];
        if (count > 1) {
            place.array().read(0, count, block);
        }
        boolean rises = count > 1;
        for (int i = 1; rises && i < count; i++) {
            rises = block[place.column()][i] > block[place.column()][i - 1];
        }
        return rises;
    }

    private void sayUnused() {
        List<String> unused = contents.arrays().stream()
                .filter(array -> !recording.arrays().contains(array))
                .filter(array -> !recording.timing().stamps().equals(Optional.of(array)))
                .map(NumberArray::path)
                .toList();
        if (!unused.isEmpty()) {
            guessed.put("arrays not used", contents.listed(unused) + ", of another length or time");
        }
        if (!contents.leftOutText().isEmpty()) {
            guessed.put("left out", contents.leftOutText());
        }
    }

    private Capture read(Source source, Progress progress) throws UnreadableException, IOException {
        List<Channel> channels =
                chosen.stream().map(ColumnChoice.Chosen::channel).toList();
        Timing timing = recording.timing();
        try (CaptureBuilder builder = time.isPresent()
                ? CaptureBuilder.stamped(channels)
                : CaptureBuilder.even(
                        channels, timing.startSeconds(), timing.rateHz().orElseThrow())) {
            ArrayRows rows = new ArrayRows(contents.file(), places, time, timeFactor, chosen);
            if (rows.rows() < recording.rows()) {
                guessed.put("length", "declared as " + recording.rows() + " rows, the file holds " + rows.rows());
            }
            rows.read(builder, progress);
            sayCounts(builder);
            if (builder.leftOutCount() > 0) {
                guessed.put("rows left out", builder.leftOutCount() + ", because they hold no number");
            }
            builder.asRead(asRead());
            return builder.finish(source, guessed, progress);
        }
    }

    private void sayCounts(CaptureBuilder builder) {
        for (int i = 0; i < chosen.size(); i++) {
            double factor = chosen.get(i).factor();
            Optional<CountScale> counts =
                    places.get(chosen.get(i).column()).array().counts();
            if (counts.isPresent()
                    && Double.isFinite(factor)
                    && Double.isFinite(counts.get().scale() * factor)
                    && counts.get().scale() * factor != 0
                    && Double.isFinite(counts.get().offset() * factor)) {
                builder.counts(i, counts.get().times(factor));
            }
        }
    }
}
