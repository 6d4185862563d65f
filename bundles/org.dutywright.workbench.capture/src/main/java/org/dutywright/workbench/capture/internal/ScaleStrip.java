// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import java.util.List;
import org.dutywright.workbench.capture.view.Lane;
import org.dutywright.workbench.capture.view.LaneLayout;
import org.dutywright.workbench.capture.view.Ticks;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;

/** Left of the plot: the name of each lane with a piece of its line, and its scale. */
final class ScaleStrip extends Canvas {
    private static final int MARGIN = 6;
    private static final int TICK_PIXELS = 4;
    /** Times the width of the trace, for the piece of it beside the name is short. */
    private static final int SAMPLE_LINE_WIDTH = 2;

    private static final int SAMPLE_LINE_ROOM = 4;
    private static final int MOST_WIDTH = 220;
    private static final String WIDEST_LABEL = "-000 mV";

    private final List<Lane> lanes;
    private LaneLayout layout;
    private int plotTop;
    private Palette palette;

    ScaleStrip(Composite parent, List<Lane> lanes, Palette palette) {
        super(parent, SWT.DOUBLE_BUFFERED | SWT.NO_FOCUS);
        this.lanes = lanes;
        this.palette = palette;
        this.layout = new LaneLayout(1, lanes.size(), 0);
        addListener(SWT.Paint, event -> paint(event.gc));
    }

    void use(Palette colours) {
        palette = colours;
        setBackground(colours.ground());
        redraw();
    }

    /** Takes over where the lanes are, the plot beginning at that height. */
    void align(LaneLayout lanesLayout, int top) {
        layout = lanesLayout;
        plotTop = top;
        redraw();
    }

    @Override
    public Point computeSize(int widthHint, int heightHint, boolean changed) {
        GC gc = new GC(this);
        try {
            int width = gc.textExtent(WIDEST_LABEL).x;
            gc.setFont(nameFont());
            for (Lane lane : lanes) {
                width = Math.max(width, gc.textExtent(lane.name()).x);
            }
            return new Point(
                    Math.min(MOST_WIDTH, width + 2 * MARGIN + TICK_PIXELS), heightHint == SWT.DEFAULT ? 0 : heightHint);
        } finally {
            gc.dispose();
        }
    }

    private static Font nameFont() {
        return JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT);
    }

    private void paint(GC gc) {
        gc.setBackground(palette.ground());
        gc.fillRectangle(getClientArea());
        for (int i = 0; i < lanes.size(); i++) {
            paintName(gc, i);
            paintScale(gc, i);
        }
    }

    private void paintName(GC gc, int lane) {
        Rectangle area = getClientArea();
        int top = plotTop + layout.top(lane);
        gc.setFont(nameFont());
        int height = gc.getFontMetrics().getHeight();
        gc.setForeground(palette.text());
        gc.setClipping(0, top, area.width - MARGIN, height + 2);
        gc.drawText(lanes.get(lane).name(), MARGIN, top + 1, true);
        gc.setClipping((Rectangle) null);
        gc.setForeground(palette.trace(lane));
        gc.setLineWidth(SAMPLE_LINE_WIDTH * Palette.traceWidth(lane));
        int y = top + height + SAMPLE_LINE_ROOM;
        gc.drawLine(MARGIN, y, Math.min(area.width - MARGIN, MARGIN + 3 * height), y);
        gc.setLineWidth(1);
    }

    private void paintScale(GC gc, int index) {
        Lane lane = lanes.get(index);
        int right = getClientArea().width;
        gc.setFont(getFont());
        gc.setForeground(palette.text());
        int height = gc.getFontMetrics().getHeight();
        Rectangle name = nameArea(gc, index);
        Ticks ticks = Scale.of(layout, index, lane, height);
        ticks.between(lane.low(), lane.high()).forEach(value -> {
            int y = plotTop + layout.pixelOf(index, lane, value);
            String label = ticks.label(value);
            Point size = gc.textExtent(label);
            Rectangle place = new Rectangle(right - TICK_PIXELS - 2 - size.x, y - height / 2, size.x, height);
            // no mark without its number
            if (!place.intersects(name)) {
                gc.drawLine(right - TICK_PIXELS, y, right, y);
                gc.drawText(label, place.x, place.y, true);
            }
        });
    }

    /** Where the name of a lane and the piece of its line are. */
    private Rectangle nameArea(GC gc, int index) {
        gc.setFont(nameFont());
        int height = gc.getFontMetrics().getHeight();
        int width = Math.max(3 * height, gc.textExtent(lanes.get(index).name()).x);
        gc.setFont(getFont());
        return new Rectangle(0, plotTop + layout.top(index), 2 * MARGIN + width, 2 * height);
    }

    /** The ticks of a lane, the same for labels and lines. */
    static final class Scale {
        private static final int LINES_PER_LABEL = 2;

        private Scale() {}

        static Ticks of(LaneLayout layout, int index, Lane lane, int textHeight) {
            int room = layout.lowPixel(index) - layout.highPixel(index);
            int most = Math.max(2, room / Math.max(1, LINES_PER_LABEL * textHeight));
            return Ticks.within(lane.high() - lane.low(), Math.min(6, most), lane.unit());
        }
    }
}
