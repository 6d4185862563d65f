// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import org.dutywright.workbench.capture.view.Ticks;
import org.dutywright.workbench.capture.view.TimeScale;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;

/**
 * Below the plot: the axis of time. The chart's own axis takes room for its last label from the plot, which would change
 * its width, and with it the instant under the pointer, at each turn of the wheel.
 */
final class TimeStrip extends Canvas {
    private static final int LABEL_PIXELS = 104;
    private static final int TICK_PIXELS = 4;
    private static final int MARGIN = 2;

    private TimeScale time;
    private int plotLeft;
    private Palette palette;

    TimeStrip(Composite parent, TimeScale time, Palette palette) {
        super(parent, SWT.DOUBLE_BUFFERED | SWT.NO_FOCUS);
        this.time = time;
        this.palette = palette;
        addListener(SWT.Paint, event -> paint(event.gc));
    }

    /** The ticks of a window, the same for labels and lines. */
    static Ticks ticks(TimeScale scale) {
        return Ticks.within(scale.shown().spanSeconds(), scale.widthPixels() / LABEL_PIXELS, "s");
    }

    void use(Palette colours) {
        palette = colours;
        setBackground(colours.ground());
        redraw();
    }

    /** Takes over what is shown, the plot beginning that far from the left. */
    void align(TimeScale scale, int left) {
        time = scale;
        plotLeft = left;
        redraw();
    }

    @Override
    public Point computeSize(int widthHint, int heightHint, boolean changed) {
        GC gc = new GC(this);
        try {
            int height = gc.getFontMetrics().getHeight() + TICK_PIXELS + 2 * MARGIN;
            return new Point(widthHint == SWT.DEFAULT ? 0 : widthHint, height);
        } finally {
            gc.dispose();
        }
    }

    private void paint(GC gc) {
        gc.setBackground(palette.ground());
        gc.fillRectangle(getClientArea());
        gc.setForeground(palette.text());
        gc.drawLine(plotLeft, 0, plotLeft + time.widthPixels(), 0);
        int width = getClientArea().width;
        Ticks ticks = ticks(time);
        ticks.between(time.shown().startSeconds(), time.shown().endSeconds()).forEach(seconds -> {
            int x = plotLeft + time.pixelAt(seconds);
            gc.drawLine(x, 0, x, TICK_PIXELS);
            String label = ticks.label(seconds);
            int length = gc.textExtent(label).x;
            gc.drawText(label, Math.clamp(x - length / 2, 0, Math.max(0, width - length)), TICK_PIXELS + MARGIN, true);
        });
    }
}
