// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.workbench.WidgetIds;
import org.dutywright.workbench.capture.view.Drawing;
import org.dutywright.workbench.capture.view.Flag;
import org.dutywright.workbench.capture.view.Lane;
import org.dutywright.workbench.capture.view.LaneLayout;
import org.dutywright.workbench.capture.view.Ticks;
import org.dutywright.workbench.capture.view.TimeScale;
import org.dutywright.workbench.capture.view.TimeView;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.SWTException;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;

/** The traces of a capture, one lane above the other on one axis of time. */
public final class TracePlot extends Composite {
    /** Name of the control that shows the traces and takes mouse and keys. */
    public static final String PLOT = "capture.plot";

    private static final int HEAD_MARGIN = 10;

    private final Display display;
    private final PlotModel model;
    private final TraceChart chart;
    private final ScaleStrip scale;
    private final TimeStrip time;
    private final Label hint;
    private final PlotPainter painter;
    private final DrawingJob job;
    private final int headPixels;
    private TimeView view;
    private Palette palette;
    private Optional<TimeScale> wanted = Optional.empty();
    private Optional<Drawing> drawn = Optional.empty();

    TracePlot(Composite parent, PlotModel model) {
        super(parent, SWT.NONE);
        this.display = getDisplay();
        this.model = model;
        this.view = model.whole();
        this.palette = Palette.on(display.getSystemColor(SWT.COLOR_LIST_BACKGROUND));
        GridLayoutFactory.fillDefaults().numColumns(2).spacing(0, 0).applyTo(this);
        scale = WidgetIds.name(new ScaleStrip(this, model.lanes(), palette), "capture.scale");
        GridDataFactory.fillDefaults().grab(false, true).applyTo(scale);
        chart = new TraceChart(this, model.lanes().size());
        GridDataFactory.fillDefaults().grab(true, true).applyTo(chart.control());
        new Label(this, SWT.NONE);
        time = WidgetIds.name(new TimeStrip(this, new TimeScale(view.shown(), 1), palette), "capture.time");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(time);
        hint = new Label(this, SWT.CENTER);
        hint.setText(Messages.hint);
        GridDataFactory.fillDefaults().grab(true, false).span(2, 1).indent(0, 2).applyTo(hint);
        headPixels = textHeight() + HEAD_MARGIN;
        painter = new PlotPainter(model.lanes(), this::timeScale, this::laneLayout, palette);
        chart.paint(painter);
        job = new DrawingJob(model.traces(), this::receive);
        listen();
        usePalette(groundOfTheme());
        showView(view);
    }

    private int textHeight() {
        GC gc = new GC(this);
        try {
            return gc.getFontMetrics().getHeight();
        } finally {
            gc.dispose();
        }
    }

    private void listen() {
        WidgetIds.name(plot(), PLOT);
        plot().addListener(SWT.Resize, event -> showView(view));
        // The theme may change at any time and tells nobody; its colours are seen when it has things painted anew.
        addListener(SWT.Paint, event -> followTheme());
        plot().addListener(SWT.Paint, event -> followTheme());
        plot().getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = description();
            }
        });
        addDisposeListener(event -> job.close());
    }

    private String description() {
        String names = model.lanes().stream().map(Lane::name).collect(Collectors.joining(", "));
        Ticks labels = TimeStrip.ticks(timeScale());
        return MessageFormat.format(
                Messages.tracesOf,
                names,
                labels.label(view.shown().startSeconds()),
                labels.label(view.shown().endSeconds()));
    }

    /** The control that the traces are drawn on. */
    public Control plot() {
        return chart.plot();
    }

    /** The part of the capture that is shown. */
    public TimeView view() {
        return view;
    }

    /** Instants and pixels of the plot as it is. */
    public TimeScale timeScale() {
        return new TimeScale(view.shown(), Math.max(1, plot().getSize().x));
    }

    /** Where the lanes are. */
    public LaneLayout laneLayout() {
        return new LaneLayout(Math.max(1, plot().getSize().y), model.lanes().size(), headPixels);
    }

    /** Whether the traces of the present view are drawn and painted, none of an earlier one. */
    public boolean isUpToDate() {
        return painter.isPainted()
                && drawn.filter(drawing -> drawing.scale().equals(timeScale())).isPresent();
    }

    /** The stretch that is marked, as lane, start and end. */
    public Optional<Mark> mark() {
        return painter.mark();
    }

    /** The colour of a lane's trace at present. */
    public Color colourOf(int lane) {
        return palette.trace(lane);
    }

    /** The lane of the channel of that name, -1 where there is none, which stands for all. */
    public int laneOf(String channel) {
        return model.indexOf(channel);
    }

    PlotModel model() {
        return model;
    }

    Optional<Flag> flagAt(int lane, int x, int y) {
        return painter.flagAt(lane, x, y);
    }

    void setEvents(List<List<PulseEvent>> events) {
        painter.events(events);
        paintAnew();
    }

    /** Marks a stretch, or takes the mark away. */
    public void setMark(Optional<Mark> mark) {
        painter.mark(mark);
        paintAnew();
    }

    private void paintAnew() {
        painter.due();
        plot().redraw();
    }

    /** Shows another part of the capture: at once with what is drawn already, exactly as soon as it is worked out. */
    public void showView(TimeView next) {
        view = next;
        TimeScale now = timeScale();
        LaneLayout lanes = laneLayout();
        List<LaneLayout.AxisRange> ranges = new ArrayList<>();
        for (int i = 0; i < model.lanes().size(); i++) {
            ranges.add(lanes.axisRange(i, model.lanes().get(i)));
        }
        chart.show(now, ranges);
        scale.align(lanes, plotTop());
        time.align(now, plot().getLocation().x);
        paintAnew();
        // What is drawn at the moment says nothing: drawings asked for before may still be on their way.
        if (!wanted.equals(Optional.of(now))) {
            wanted = Optional.of(now);
            job.want(now);
        }
    }

    private int plotTop() {
        Point inChart = plot().getLocation();
        return chart.control().getLocation().y + inChart.y - scale.getLocation().y;
    }

    // in the job's thread
    private void receive(Drawing drawing) {
        try {
            display.asyncExec(() -> show(drawing));
        } catch (SWTException e) {
            // The workbench is closed, and nobody waits for the drawing.
            job.close();
        }
    }

    private void show(Drawing drawing) {
        if (!isDisposed()) {
            drawn = Optional.of(drawing);
            chart.draw(drawing, palette);
            paintAnew();
        }
    }

    private Color groundOfTheme() {
        return getBackground();
    }

    private void followTheme() {
        if (!groundOfTheme().equals(palette.ground())) {
            display.asyncExec(() -> {
                if (!isDisposed()) {
                    usePalette(groundOfTheme());
                }
            });
        }
    }

    private void usePalette(Color ground) {
        palette = Palette.on(ground);
        scale.use(palette);
        time.use(palette);
        hint.setForeground(palette.text());
        hint.setBackground(ground);
        painter.use(palette);
        chart.use(palette);
        drawn.ifPresent(drawing -> chart.draw(drawing, palette));
        redraw();
    }
}
