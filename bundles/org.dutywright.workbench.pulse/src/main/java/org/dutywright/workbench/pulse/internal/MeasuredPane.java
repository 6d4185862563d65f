// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.text.MessageFormat;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Cycle;
import org.dutywright.workbench.WidgetIds;
import org.dutywright.workbench.pulse.PulseIds;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;

/** The quantities of all channels, and below or beside them the cycles of one. */
final class MeasuredPane {
    private static final int[] SHARES = {1, 1};
    /** The cycles must keep some room, however many channels the summary has. */
    private static final double MOST_SUMMARY = 0.66;

    private static final int SCROLL_BAR = 20;
    private static final String WIDEST_VALUE = "Duty cycle at the input, max";

    /** A cycle of a channel. */
    record Choice(String channel, Cycle cycle) {}

    private final SashForm sash;
    private final Table summary;
    private final Combo channel;
    private final Label count;
    private final CycleGrid grid;
    private Optional<CaptureMeasurement> shown = Optional.empty();
    private int[] weights = SHARES;

    MeasuredPane(Composite parent, Consumer<Choice> chosen) {
        sash = new SashForm(parent, SWT.VERTICAL);
        summary = WidgetIds.name(new Table(sash, SWT.FULL_SELECTION), PulseIds.SUMMARY);
        summary.setHeaderVisible(true);
        Composite lower = new Composite(sash, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(3).spacing(6, 2).applyTo(lower);
        Label label = new Label(lower, SWT.NONE);
        label.setText(Messages.channel);
        GridDataFactory.swtDefaults().indent(6, 0).applyTo(label);
        channel = WidgetIds.name(new Combo(lower, SWT.READ_ONLY), PulseIds.CHANNEL);
        channel.addListener(SWT.Selection, event -> showCycles(channel.getSelectionIndex()));
        count = new Label(lower, SWT.NONE);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(count);
        grid = new CycleGrid(lower, summary, row -> choice(row).ifPresent(chosen));
        GridDataFactory.fillDefaults().grab(true, true).span(3, 1).applyTo(grid.control());
        sash.setWeights(SHARES);
        weights = sash.getWeights();
        sash.addListener(SWT.Resize, event -> turn());
    }

    // The view is wide below the editors and high at their side.
    private void turn() {
        Point size = sash.getSize();
        int orientation = size.x > size.y ? SWT.HORIZONTAL : SWT.VERTICAL;
        if (sash.getOrientation() != orientation) {
            sash.setOrientation(orientation);
            sash.setWeights(SHARES);
            weights = sash.getWeights();
        }
        share();
    }

    // As wide as the summary wants, until the user has moved the border.
    private void share() {
        int width = sash.getSize().x;
        if (sash.getOrientation() != SWT.HORIZONTAL || width == 0 || !Arrays.equals(weights, sash.getWeights())) {
            return;
        }
        int wanted = summary.computeSize(SWT.DEFAULT, SWT.DEFAULT).x + SCROLL_BAR;
        int given = (int) Math.min(wanted, width * MOST_SUMMARY);
        sash.setWeights(given, width - given);
        weights = sash.getWeights();
    }

    Composite control() {
        return sash;
    }

    /** Shows a measurement; one that is shown already keeps its place in the table. */
    void show(Optional<CaptureMeasurement> next) {
        if (shown.isPresent() && next.isPresent() && shown.get() == next.get()) {
            return;
        }
        String before = channel.getText();
        shown = next;
        List<String> names = channels().stream().map(it -> it.channel().name()).toList();
        channel.setItems(names.toArray(String[]::new));
        fillSummary(names);
        showCycles(Math.max(0, names.indexOf(before)));
        channel.getParent().layout();
        share();
    }

    private List<ChannelMeasurement> channels() {
        return shown.map(CaptureMeasurement::channels).orElse(List.of());
    }

    private void fillSummary(List<String> names) {
        summary.setRedraw(false);
        try {
            summary.removeAll();
            for (TableColumn column : summary.getColumns()) {
                column.dispose();
            }
            column(Messages.quantity);
            names.forEach(this::column);
            for (SummaryRow row : shown.map(Summary::of).orElse(List.of())) {
                TableItem item = new TableItem(summary, SWT.NONE);
                item.setText(0, row.label());
                IntStream.range(0, names.size())
                        .forEach(index -> item.setText(index + 1, row.values().get(index)));
            }
            int most = widestValue();
            for (TableColumn column : summary.getColumns()) {
                column.pack();
                column.setWidth(Math.min(column.getWidth(), most));
            }
        } finally {
            summary.setRedraw(true);
        }
    }

    // Why something was not measured may be a whole sentence, which would push the other channels out of sight.
    private int widestValue() {
        GC gc = new GC(summary);
        try {
            return gc.textExtent(WIDEST_VALUE).x;
        } finally {
            gc.dispose();
        }
    }

    private void column(String title) {
        new TableColumn(summary, SWT.LEFT).setText(title);
    }

    private void showCycles(int index) {
        if (index >= channels().size()) {
            count.setText("");
            grid.show(CycleRows.none());
            return;
        }
        ChannelMeasurement of = channels().get(index);
        channel.select(index);
        count.setText(words(of));
        grid.show(CycleRows.of(of.channel().name(), of.channel().unit(), of.cycles()));
    }

    private static String words(ChannelMeasurement channel) {
        if (channel.cycleCount() == 0) {
            return Messages.noCycles;
        }
        String words = channel.disturbedCount() == 0 ? Messages.cyclesOf : Messages.cyclesDisturbed;
        return new MessageFormat(words, Locale.ROOT)
                .format(new Object[] {channel.cycleCount(), channel.disturbedCount()});
    }

    private Optional<Choice> choice(long row) {
        return grid.rows().cycle(row).map(cycle -> new Choice(grid.rows().channel(), cycle));
    }

    /** Shows a cycle of a channel. */
    void reveal(String name, long cycle) {
        if (turnTo(name) && cycle < grid.rows().count()) {
            grid.reveal(cycle);
        }
    }

    /** Shows the cycle at an instant. */
    void revealAt(String name, double seconds) {
        if (turnTo(name)) {
            grid.rows().at(seconds).ifPresent(grid::reveal);
        }
    }

    // An empty name means every channel; the one shown will do.
    private boolean turnTo(String name) {
        int index = name.isEmpty() ? channel.getSelectionIndex() : channel.indexOf(name);
        if (index < 0) {
            return false;
        }
        if (index != channel.getSelectionIndex()) {
            showCycles(index);
        }
        return true;
    }

    void setFocus() {
        grid.control().setFocus();
    }
}
