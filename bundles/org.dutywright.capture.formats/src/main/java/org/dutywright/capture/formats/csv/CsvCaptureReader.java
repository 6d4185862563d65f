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
import org.dutywright.capture.Capture;
import org.dutywright.capture.CaptureBuilder;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.Source;
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
    public Capture read(Path file, ReadSettings settings, Progress progress) throws UnreadableException, IOException {
        byte[] start;
        try (InputStream stream = Files.newInputStream(file)) {
            start = stream.readNBytes(HEAD_BYTES);
        }
        if (start.length == 0) {
            throw new UnreadableException(file, "", "is empty", "record or export it again");
        }
        HeadText head = HeadText.of(start, start.length < HEAD_BYTES)
                .orElseThrow(() ->
                        new UnreadableException(file, "byte 0", "is no text", "export the recording as text (CSV)"));
        Layout layout = LayoutFinder.find(head)
                .orElseThrow(() -> new UnreadableException(
                        file, "line 1", "holds no table of numbers", "export the recording as text (CSV)"));
        if (layout.width() > MOST_COLUMNS) {
            throw new UnreadableException(
                    file,
                    "line " + layout.firstDataLine(),
                    "has " + layout.width() + " columns, more than " + MOST_COLUMNS,
                    "export fewer channels, one sample a line");
        }
        ColumnPlan plan = ColumnPlan.of(file, layout, settings, StatedRates.find(head, layout));
        if (head.isAsciiBased() && !layout.quoted()) {
            try {
                return read(file, head, layout, plan, progress);
            } catch (RowSplitter.QuoteFound e) {
                return quoted(file, head, layout, plan, progress);
            }
        }
        return quoted(file, head, layout, plan, progress);
    }

    private Capture quoted(Path file, HeadText head, Layout layout, ColumnPlan plan, Progress progress)
            throws UnreadableException, IOException {
        try {
            return read(file, head, layout.withQuotes(), plan, progress);
        } catch (RowSplitter.QuoteFound e) {
            throw new IllegalStateException("quotes are known here", e);
        }
    }

    private Capture read(Path file, HeadText head, Layout layout, ColumnPlan plan, Progress progress)
            throws UnreadableException, IOException, RowSplitter.QuoteFound {
        Map<String, String> guessed = guessed(head, layout, plan);
        progress.begin("reading " + file.getFileName(), Files.size(file));
        try (InputStream opened = Files.newInputStream(file);
                DigestStream stream = new DigestStream(opened, progress);
                CaptureBuilder builder = builder(plan)) {
            RowCollector collector = new RowCollector(file, layout, plan, builder);
            if (layout.quoted()) {
                new QuotedRows(file, stream, head, layout).read(collector);
            } else {
                new FastRows(file, stream, head, layout, plan, collector, pace).read();
            }
            collector.finish(guessed);
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

    private static Map<String, String> guessed(HeadText head, Layout layout, ColumnPlan plan) {
        Map<String, String> guessed = new LinkedHashMap<>();
        guessed.put("encoding", head.charset().name());
        guessed.put("delimiter", layout.delimiter().word());
        guessed.put("decimal mark", layout.decimalComma() ? "comma" : "point");
        guessed.put("preamble lines", Long.toString(layout.preambleLines()));
        guessed.put(
                "header line",
                layout.header().map(row -> Long.toString(row.line())).orElse("none"));
        guessed.put(
                "unit line",
                layout.units().map(row -> Long.toString(row.line())).orElse("none"));
        guessed.putAll(plan.guessed());
        return guessed;
    }
}
