// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Channel;
import org.dutywright.capture.ColumnChoice;
import org.dutywright.capture.CountScale;
import org.dutywright.capture.EvenTimeBase;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Samples;
import org.dutywright.capture.Segment;
import org.dutywright.capture.Source;
import org.dutywright.capture.StampedTimeBase;
import org.dutywright.capture.TimeBase;
import org.dutywright.capture.UnreadableException;

/** Makes the capture of a store. */
final class StoredCapture {
    /** What was guessed and said when the source of a store was read, so that nobody takes it for the store's. */
    private static final String AT_IMPORT = "import: ";

    private final ArrowFile file;
    private final boolean stamped;
    private final List<Channel> channels = new ArrayList<>();
    private final List<ArrowSamples.Column> columns = new ArrayList<>();

    private StoredCapture(ArrowFile file, boolean stamped) {
        this.file = file;
        this.stamped = stamped;
    }

    /** Reads it; the capture owns the file from then on. */
    static Capture read(ArrowFile file, ReadSettings settings, Progress progress)
            throws UnreadableException, IOException {
        String version = file.metadata().get(StoreMetadata.STORE);
        if (!StoreMetadata.VERSION.equals(version)) {
            throw new UnreadableException(
                    file.path(),
                    "",
                    "is a store of version " + version + ", this program reads version " + StoreMetadata.VERSION,
                    "use a newer version of this program");
        }
        boolean stamped = StoreMetadata.STAMPED.equals(file.metadata().get(StoreMetadata.TIME));
        return new StoredCapture(file, stamped).read(settings, progress);
    }

    private Capture read(ReadSettings settings, Progress progress) throws UnreadableException, IOException {
        for (int i = stamped ? 1 : 0; i < file.columns().size(); i++) {
            addColumn(i);
        }
        long samples = file.batches().rows();
        if (samples == 0 || channels.isEmpty()) {
            throw new UnreadableException(file.path(), "", "holds no sample", "record or convert it again");
        }
        StoreTime time = new StoreTime(file);
        time.checkSamples(samples);
        List<Segment> segments = time.segments();
        TimeBase base = stamped
                ? StampedTimeBase.of(
                        stamps(),
                        segments,
                        time.seconds(StoreMetadata.STEP),
                        time.seconds(StoreMetadata.STAMP_UNCERTAINTY))
                : EvenTimeBase.of(time.sampleRateHz(), segments);
        List<ColumnChoice.Chosen> chosen = chosen(settings);
        ContentCheck.Checked checked = ContentCheck.check(file, columns, stamped, progress);
        Samples all = new ArrowSamples(file, columns, checked.extremes());
        List<Channel> named = chosen.stream().map(ColumnChoice.Chosen::channel).toList();
        Source source = new Source(file.path(), checked.sha256());
        return new Capture(List.of(source), named, base, ColumnChoice.view(all, chosen), guessed(), time.statedRates());
    }

    private void addColumn(int index) throws UnreadableException {
        ArrowColumn column = file.columns().get(index);
        if (column.number().isEmpty() || column.secondsPerUnit().isPresent()) {
            throw changed("column '" + column.name() + "' holds " + column.kind());
        }
        for (int batch = 0; batch < file.batches().count(); batch++) {
            if (file.batches().validity(index, batch) != ArrowBatches.NONE) {
                throw changed("numbers are missing in '" + column.name() + "'");
            }
        }
        Map<String, String> metadata = column.metadata();
        Optional<CountScale> scale = Optional.empty();
        if (metadata.containsKey(StoreMetadata.SCALE)) {
            scale = Optional.of(scale(column));
        }
        String name = scale.isPresent() ? metadata.getOrDefault(StoreMetadata.CHANNEL, column.name()) : column.name();
        channels.add(new Channel(name, metadata.getOrDefault(StoreMetadata.UNIT, "")));
        columns.add(new ArrowSamples.Column(index, scale));
    }

    private CountScale scale(ArrowColumn column) throws UnreadableException {
        String scale = column.metadata().get(StoreMetadata.SCALE);
        String offset = column.metadata().getOrDefault(StoreMetadata.OFFSET, "0");
        try {
            return new CountScale(Double.parseDouble(scale), Double.parseDouble(offset));
        } catch (IllegalArgumentException e) {
            throw changed("the scale of '" + column.name() + "' is no number other than 0, or its offset none");
        }
    }

    private Samples stamps() throws UnreadableException {
        boolean there = !file.columns().isEmpty()
                && file.columns().get(0).name().equals(StoreMetadata.TIME_COLUMN)
                && file.columns().get(0).number().equals(Optional.of(NumberType.FLOAT64));
        if (!there) {
            throw changed("the column " + StoreMetadata.TIME_COLUMN + " is missing");
        }
        return ArrowSamples.of(file, 0);
    }

    private List<ColumnChoice.Chosen> chosen(ReadSettings settings) throws UnreadableException {
        List<ColumnChoice.Column> all = channels.stream()
                .map(channel -> new ColumnChoice.Column(channel.name(), channel.name(), channel.unit(), 1))
                .toList();
        return ColumnChoice.choose(file.path(), all, settings);
    }

    private Map<String, String> guessed() {
        Map<String, String> all = new LinkedHashMap<>();
        for (String key : List.of(StoreMetadata.SETTINGS, StoreMetadata.GUESSED)) {
            file.metadata().getOrDefault(key, "").lines().forEach(line -> {
                int colon = line.indexOf(": ", line.startsWith(AT_IMPORT) ? AT_IMPORT.length() : 0);
                if (colon > 0) {
                    put(all, line.substring(0, colon), line.substring(colon + 2));
                }
            });
        }
        // of a store made from a store, the first source is told
        put(all, "source", file.metadata().getOrDefault(StoreMetadata.SOURCES, ""));
        return all;
    }

    private static void put(Map<String, String> all, String key, String value) {
        if (!value.isBlank()) {
            all.putIfAbsent(key.startsWith(AT_IMPORT) ? key : AT_IMPORT + key, value.replace("\n", ", "));
        }
    }

    private UnreadableException changed(String how) {
        return StoreTime.changed(file, how);
    }
}
