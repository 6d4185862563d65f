// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import java.util.OptionalInt;
import org.dutywright.workbench.capture.view.TimeView;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;

/** Mouse and keys on the traces: the wheel zooms at the pointer, dragging and arrow keys move, Home shows all. */
public final class TraceControls {
    private static final double ZOOM = 1.25;
    private static final double KEY_ZOOM = 1.5;
    private static final double KEY_STEP = 0.1;
    private static final int DRAG_PIXELS = 4;

    private final TracePlot plot;
    private final Listener listener;
    private Point pressed;
    private TimeView pressedView;
    private boolean dragging;

    /** Hears where the pointer is and what it points at. */
    public interface Listener {
        /** A click that was no drag. */
        void clicked(int lane, int x, int y);

        /** The pointer moved to a place of a lane. */
        void hovered(int lane, int x);

        /** The pointer left the traces. */
        void left();
    }

    private TraceControls(TracePlot plot, Listener listener) {
        this.plot = plot;
        this.listener = listener;
    }

    /** Makes the plot follow mouse and keys. */
    static void on(TracePlot plot, Listener listener) {
        TraceControls controls = new TraceControls(plot, listener);
        Control control = plot.plot();
        control.addListener(SWT.MouseVerticalWheel, controls::wheel);
        control.addListener(SWT.MouseDown, controls::down);
        control.addListener(SWT.MouseMove, controls::move);
        control.addListener(SWT.MouseUp, controls::up);
        control.addListener(SWT.MouseExit, event -> listener.left());
        control.addListener(SWT.KeyDown, controls::key);
        control.addListener(SWT.Traverse, event -> event.doit = isTab(event));
    }

    private static boolean isTab(Event event) {
        return event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS;
    }

    private void wheel(Event event) {
        if (event.count != 0) {
            double at = plot.timeScale().secondsAt(event.x);
            plot.showView(plot.view().zoomed(at, Math.pow(ZOOM, Math.signum(event.count))));
            event.doit = false;
        }
    }

    private void down(Event event) {
        plot.plot().forceFocus();
        if (event.button == 1) {
            pressed = new Point(event.x, event.y);
            pressedView = plot.view();
            dragging = false;
        }
    }

    private void move(Event event) {
        if (pressed != null && Math.abs(event.x - pressed.x) >= DRAG_PIXELS) {
            dragging = true;
        }
        if (dragging) {
            double moved = (event.x - pressed.x) * plot.timeScale().secondsPerPixel();
            plot.showView(pressedView.movedTo(pressedView.shown().startSeconds() - moved));
            return;
        }
        OptionalInt lane = plot.laneLayout().laneAt(event.y);
        if (lane.isPresent()) {
            listener.hovered(lane.getAsInt(), event.x);
        } else {
            listener.left();
        }
    }

    private void up(Event event) {
        if (event.button != 1 || pressed == null) {
            return;
        }
        pressed = null;
        if (dragging) {
            dragging = false;
            return;
        }
        plot.laneLayout().laneAt(event.y).ifPresent(lane -> listener.clicked(lane, event.x, event.y));
    }

    private void key(Event event) {
        TimeView view = plot.view();
        double middle = view.shown().middleSeconds();
        switch (event.keyCode) {
            case SWT.ARROW_LEFT -> plot.showView(view.panned(-KEY_STEP));
            case SWT.ARROW_RIGHT -> plot.showView(view.panned(KEY_STEP));
            case SWT.PAGE_UP -> plot.showView(view.panned(-1));
            case SWT.PAGE_DOWN -> plot.showView(view.panned(1));
            case SWT.HOME -> plot.showView(view.fitted());
            case SWT.KEYPAD_ADD -> plot.showView(view.zoomed(middle, KEY_ZOOM));
            case SWT.KEYPAD_SUBTRACT -> plot.showView(view.zoomed(middle, 1 / KEY_ZOOM));
            default -> character(event.character, middle);
        }
    }

    private void character(char character, double middle) {
        if (character == '+') {
            plot.showView(plot.view().zoomed(middle, KEY_ZOOM));
        } else if (character == '-') {
            plot.showView(plot.view().zoomed(middle, 1 / KEY_ZOOM));
        }
    }
}
