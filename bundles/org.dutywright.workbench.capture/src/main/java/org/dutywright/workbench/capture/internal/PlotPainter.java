// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.workbench.capture.view.Flag;
import org.dutywright.workbench.capture.view.Lane;
import org.dutywright.workbench.capture.view.LaneLayout;
import org.dutywright.workbench.capture.view.Ticks;
import org.dutywright.workbench.capture.view.TimeScale;
import org.eclipse.swt.graphics.GC;

/** Paints what the chart does not know: lanes, their scale lines, the marked stretch and the flags of events. */
final class PlotPainter {
    private static final int MARK_ALPHA = 56;
    private static final int OPAQUE = 255;
    private static final int SMALLEST_MARK_PIXELS = 3;

    private final List<Lane> lanes;
    private final Supplier<TimeScale> scale;
    private final Supplier<LaneLayout> layout;
    private Palette palette;
    private Optional<Mark> mark = Optional.empty();
    private List<List<PulseEvent>> events = List.of();
    private List<List<Flag>> flags = List.of();
    private boolean painted;

    PlotPainter(List<Lane> lanes, Supplier<TimeScale> scale, Supplier<LaneLayout> layout, Palette palette) {
        this.lanes = lanes;
        this.scale = scale;
        this.layout = layout;
        this.palette = palette;
    }

    void use(Palette colours) {
        palette = colours;
    }

    void mark(Optional<Mark> stretch) {
        mark = stretch;
    }

    Optional<Mark> mark() {
        return mark;
    }

    /** The events of each lane. */
    void events(List<List<PulseEvent>> ofLanes) {
        events = List.copyOf(ofLanes);
    }

    /** Tells that what is painted is about to change. */
    void due() {
        painted = false;
    }

    /** Whether everything was painted since the last change. */
    boolean isPainted() {
        return painted;
    }

    /** The flag at a place of the plot, as last painted. */
    Optional<Flag> flagAt(int lane, int x, int y) {
        LaneLayout now = layout.get();
        if (lane >= flags.size() || y >= now.highPixel(lane)) {
            return Optional.empty();
        }
        return Flag.at(flags.get(lane), x);
    }

    void paintBehind(GC gc) {
        TimeScale time = scale.get();
        LaneLayout where = layout.get();
        gc.setForeground(palette.grid());
        TimeStrip.ticks(time)
                .between(time.shown().startSeconds(), time.shown().endSeconds())
                .forEach(seconds -> {
                    int x = time.pixelAt(seconds);
                    gc.drawLine(x, 0, x, where.heightPixels());
                });
        for (int i = 0; i < lanes.size(); i++) {
            paintScaleLines(gc, where, time.widthPixels(), i);
            if (mark.isPresent()) {
                paintMark(gc, time, where, i, mark.get());
            }
        }
    }

    private void paintScaleLines(GC gc, LaneLayout where, int width, int index) {
        Lane lane = lanes.get(index);
        gc.setForeground(palette.grid());
        Ticks ticks =
                ScaleStrip.Scale.of(where, index, lane, gc.getFontMetrics().getHeight());
        ticks.between(lane.low(), lane.high()).forEach(value -> {
            int y = where.pixelOf(index, lane, value);
            gc.drawLine(0, y, width, y);
        });
        if (index > 0) {
            gc.setForeground(palette.text());
            gc.drawLine(0, where.top(index), width, where.top(index));
        }
    }

    private void paintMark(GC gc, TimeScale time, LaneLayout where, int index, Mark stretch) {
        if (!stretch.covers(index) || !time.shown().touches(stretch.startSeconds(), stretch.endSeconds())) {
            return;
        }
        int left = time.pixelAt(stretch.startSeconds());
        int width = Math.max(SMALLEST_MARK_PIXELS, time.pixelAt(stretch.endSeconds()) - left);
        gc.setBackground(palette.text());
        gc.setAlpha(MARK_ALPHA);
        gc.fillRectangle(left, where.top(index), width, where.bottom(index) - where.top(index));
        gc.setAlpha(OPAQUE);
        gc.setForeground(palette.text());
        gc.drawLine(left, where.top(index), left, where.bottom(index));
        gc.drawLine(left + width, where.top(index), left + width, where.bottom(index));
    }

    void paintFront(GC gc) {
        TimeScale time = scale.get();
        LaneLayout where = layout.get();
        List<List<Flag>> ofLanes = new ArrayList<>();
        for (int i = 0; i < events.size(); i++) {
            List<Flag> ofLane = Flag.of(events.get(i), time, text -> gc.textExtent(text).x);
            for (Flag flag : ofLane) {
                paintFlag(gc, where, i, flag, time.pixelAt(flag.event().startSeconds()));
            }
            ofLanes.add(ofLane);
        }
        flags = ofLanes;
        painted = true;
    }

    private void paintFlag(GC gc, LaneLayout where, int lane, Flag flag, int pole) {
        int top = where.top(lane) + 2;
        int height = gc.getFontMetrics().getHeight();
        gc.setBackground(palette.ground());
        gc.fillRectangle(flag.x(), top, flag.width(), height);
        gc.setForeground(palette.text());
        gc.drawRectangle(flag.x(), top, flag.width(), height);
        gc.drawText(flag.text(), flag.textX(), top, true);
        gc.drawLine(pole, top + height, pole, where.highPixel(lane));
    }
}
