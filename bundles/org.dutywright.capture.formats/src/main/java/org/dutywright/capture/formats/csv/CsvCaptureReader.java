// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import aQute.bnd.annotation.spi.ServiceProvider;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Source;
import org.dutywright.capture.TableSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.internal.DigestStream;

/**
 * Reads captures from delimited text; what it takes is said in the package description. Delimiter, decimal mark,
 * headings, units and time column are found by looking at the start of the file; the text is then read once, numbers
 * and SHA-256 in the same pass.
 *
 * <p>Rows in which a chosen column has no number are left out and appear as gaps. A cell that holds anything else is
 * an error with its line and column. A last line that is cut off is left out.
 */
@ServiceProvider(CaptureReader.class)
public final class CsvCaptureReader implements CaptureReader {
    private static final int HEAD_BYTES = 1 << 18;
    private static final int LIKELIHOOD_BYTES = 1 << 16;
    private static final int MOST_COLUMNS = 1000;
    private static final int LIKELY = 60;
    private static final int TEXT_WITHOUT_TABLE = 5;

    private final FastRows.Pace pace;
    private final long heapValues;

    /** Makes the reader. */
    public CsvCaptureReader() {
        this(FastRows.Pace.best(), CaptureBuilder.HEAP_VALUES);
    }

    CsvCaptureReader(FastRows.Pace pace, long heapValues) {
        this.pace = pace;
        this.heapValues = heapValues;
    }

    @Override
    public String id() {
        return "csv";
    }

    @Override
    public String title() {
        return "text table (CSV)";
    }

    @Override
    public int likelihood(byte[] head) {
        Optional<HeadText> text = HeadText.of(head, head.length < LIKELIHOOD_BYTES);
        if (text.isEmpty()) {
            return 0;
        }
        return LayoutFinder.find(text.get()).isPresent() ? LIKELY : TEXT_WITHOUT_TABLE;
    }

    @Override
    public Set<ReadSettings.Part> takes() {
        return Set.of(ReadSettings.Part.TABLE, ReadSettings.Part.TIME);
    }

    @Override
    public Capture read(Path file, ReadSettings settings, Progress progress) throws UnreadableException, IOException {
        byte[] start;
        try (InputStream stream = Files.newInputStream(file)) {
            start = stream.readNBytes(HEAD_BYTES);
        }
        if (start.length == 0) {
            throw new UnreadableException(file, "", "is empty", "record or export it again");
        }
        TableSettings said = settings.table();
        HeadText head = HeadText.of(start, start.length < HEAD_BYTES, said.encoding())
                .orElseThrow(() ->
                        new UnreadableException(file, "byte 0", "is no text", "export the recording as text (CSV)"));
        Layout layout = layout(file, head, said);
        if (layout.width() > MOST_COLUMNS) {
            throw new UnreadableException(
                    file,
                    "line " + layout.firstDataLine(),
                    "has " + layout.width() + " columns, more than " + MOST_COLUMNS,
                    "export fewer channels, one sample a line");
        }
        ColumnPlan plan = ColumnPlan.of(file, layout, settings, StatedRates.find(head, layout));
        Map<String, String> guessed = Guesses.of(head, layout, said);
        guessed.putAll(plan.guessed());
        ReadSettings asRead = plan.asRead(settings).withTable(Guesses.asRead(head, layout, said));
        Table table = new Table(file, head, layout, plan, guessed, asRead);
        if (head.isAsciiBased() && !layout.quoted()) {
            try {
                return read(table, progress);
            } catch (RowSplitter.QuoteFound e) {
                return quoted(table, progress);
            }
        }
        return quoted(table, progress);
    }

    /** A file, and all that is decided before its rows are read. */
    private record Table(
            Path file,
            HeadText head,
            Layout layout,
            ColumnPlan plan,
            Map<String, String> guessed,
            ReadSettings asRead) {
        Table withQuotes() {
            return new Table(file, head, layout.withQuotes(), plan, guessed, asRead);
        }
    }

    private static Layout layout(Path file, HeadText head, TableSettings said) throws UnreadableException {
        Optional<Layout> layout = LayoutFinder.find(head, said);
        if (layout.isEmpty() && said.isNone()) {
            throw new UnreadableException(
                    file, "line 1", "holds no table of numbers", "export the recording as text (CSV)");
        }
        if (layout.isEmpty()) {
            throw UnreadableException.lacks(
                    file,
                    "read as the settings say, it holds no table of numbers",
                    "leave out delimiter, decimal mark, encoding or lines, then they are looked for");
        }
        boolean noHeader =
                said.headerLine().orElse(0) > 0 && layout.get().header().isEmpty();
        if (noHeader || (said.unitsLine().orElse(0) > 0 && layout.get().units().isEmpty())) {
            long line =
                    noHeader ? said.headerLine().getAsLong() : said.unitsLine().getAsLong();
            throw UnreadableException.lacks(
                    file, "line " + line + " holds no " + (noHeader ? "headings" : "units"), "it is empty");
        }
        return layout.get();
    }

    private Capture quoted(Table table, Progress progress) throws UnreadableException, IOException {
        try {
            return read(table.withQuotes(), progress);
        } catch (RowSplitter.QuoteFound e) {
            throw new IllegalStateException("quotes are known here", e);
        }
    }

    private Capture read(Table table, Progress progress)
            throws UnreadableException, IOException, RowSplitter.QuoteFound {
        Path file = table.file();
        Map<String, String> guessed = new LinkedHashMap<>(table.guessed());
        progress.begin("reading " + file.getFileName(), Files.size(file));
        try (InputStream opened = Files.newInputStream(file);
                DigestStream stream = new DigestStream(opened, progress);
                CaptureBuilder builder = builder(table.plan())) {
            RowCollector collector = new RowCollector(file, table.layout(), table.plan(), builder);
            if (table.layout().quoted()) {
                new QuotedRows(file, stream, table.head(), table.layout()).read(collector);
            } else {
                new FastRows(file, stream, table.head(), table.layout(), table.plan(), collector, pace).read();
            }
            collector.finish(guessed);
            builder.asRead(table.asRead());
            return builder.finish(new Source(file, stream.sha256()), guessed, progress);
        }
    }

    private CaptureBuilder builder(ColumnPlan plan) {
        CaptureBuilder builder = plan.sampleRateHz().isPresent()
                ? CaptureBuilder.even(plan.channels(), 0, plan.sampleRateHz().getAsDouble(), heapValues)
                : CaptureBuilder.stamped(plan.channels(), heapValues);
        plan.statedRates().forEach(builder::stated);
        return builder;
    }
}
