// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.dutywright.workbench.capture.view.Drawing;
import org.dutywright.workbench.capture.view.LaneLayout.AxisRange;
import org.dutywright.workbench.capture.view.Run;
import org.dutywright.workbench.capture.view.TimeScale;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.PaintEvent;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swtchart.Chart;
import org.eclipse.swtchart.IAxis;
import org.eclipse.swtchart.IAxisSet;
import org.eclipse.swtchart.ICustomPaintListener;
import org.eclipse.swtchart.ILineSeries;
import org.eclipse.swtchart.ILineSeries.PlotSymbolType;
import org.eclipse.swtchart.ISeries;
import org.eclipse.swtchart.ISeries.SeriesType;
import org.eclipse.swtchart.ISeriesSet;
import org.eclipse.swtchart.Range;

/**
 * The chart under the traces. All lanes share one chart and with it one axis of time; each has an axis of its own for its
 * values, with a range that puts them into the lane. What is drawn comes decimated: the chart gets a few points for each
 * column of pixels, whatever the length of the capture.
 */
final class TraceChart {
    private static final int SYMBOL_SIZE = 2;
    private static final int SYMBOL_ROOM_PIXELS = 6;

    private final Chart chart;
    private final List<IAxis> valueAxes = new ArrayList<>();

    TraceChart(Composite parent, int lanes) {
        chart = new Chart(parent, SWT.NONE);
        chart.suspendUpdate(true);
        chart.getTitle().setVisible(false);
        chart.getLegend().setVisible(false);
        IAxisSet axes = chart.getAxisSet();
        for (int i = 0; i < lanes; i++) {
            IAxis axis = axes.getYAxis(i == 0 ? 0 : axes.createYAxis());
            axis.getTitle().setVisible(false);
            axis.getTick().setVisible(false);
            axis.getGrid().setVisible(false);
            // what little room an axis without labels takes is taken on the right, next to no scale
            axis.setPosition(IAxis.Position.Secondary);
            valueAxes.add(axis);
        }
        time().getTitle().setVisible(false);
        time().getTick().setVisible(false);
        time().getGrid().setVisible(false);
        chart.suspendUpdate(false);
    }

    private IAxis time() {
        return chart.getAxisSet().getXAxis(0);
    }

    Control control() {
        return chart;
    }

    Control plot() {
        return chart.getPlotArea().getControl();
    }

    void paint(PlotPainter painter) {
        chart.getPlotArea().addCustomPaintListener(new Layer(true, painter::paintBehind));
        chart.getPlotArea().addCustomPaintListener(new Layer(false, painter::paintFront));
    }

    void use(Palette palette) {
        chart.setBackground(palette.ground());
        chart.getPlotArea().setBackground(palette.ground());
        chart.redraw();
    }

    void show(TimeScale scale, List<AxisRange> values) {
        chart.suspendUpdate(true);
        try {
            time().setRange(new Range(
                    scale.shown().startSeconds(), scale.shown().endSeconds()));
            for (int i = 0; i < values.size(); i++) {
                valueAxes
                        .get(i)
                        .setRange(new Range(values.get(i).lower(), values.get(i).upper()));
            }
        } finally {
            chart.suspendUpdate(false);
        }
        chart.redraw();
    }

    void draw(Drawing drawing, Palette palette) {
        ISeriesSet series = chart.getSeriesSet();
        chart.suspendUpdate(true);
        try {
            Set<String> kept = new HashSet<>();
            for (int lane = 0; lane < drawing.channels().size(); lane++) {
                List<Run> runs = drawing.channels().get(lane);
                for (int run = 0; run < runs.size(); run++) {
                    String id = lane + "." + run;
                    kept.add(id);
                    fill(lineOf(series, id), lane, runs.get(run), drawing, palette.trace(lane));
                }
            }
            for (ISeries<?> old : series.getSeries()) {
                if (!kept.contains(old.getId())) {
                    series.deleteSeries(old.getId());
                }
            }
        } finally {
            chart.suspendUpdate(false);
        }
        chart.redraw();
    }

    private static ILineSeries<?> lineOf(ISeriesSet series, String id) {
        ISeries<?> known = series.getSeries(id);
        return (ILineSeries<?>) (known == null ? series.createSeries(SeriesType.LINE, id) : known);
    }

    private void fill(ILineSeries<?> line, int lane, Run run, Drawing drawing, Color colour) {
        line.setYAxisId(valueAxes.get(lane).getId());
        line.setXSeries(run.seconds());
        line.setYSeries(run.values());
        line.setLineColor(colour);
        line.setLineWidth(run.isSparse(drawing.scale().widthPixels()) ? Palette.traceWidth(lane) : 1);
        line.setSymbolColor(colour);
        line.setSymbolSize(SYMBOL_SIZE);
        boolean roomy = run.count() * SYMBOL_ROOM_PIXELS < drawing.scale().widthPixels();
        line.setSymbolType(drawing.samplesAreSingle() && roomy ? PlotSymbolType.SQUARE : PlotSymbolType.NONE);
    }

    private record Layer(boolean drawBehindSeries, Consumer<GC> painter) implements ICustomPaintListener {
        @Override
        public void paintControl(PaintEvent event) {
            painter.accept(event.gc);
        }
    }
}
