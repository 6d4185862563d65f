// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import java.io.IOException;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Overview;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.workbench.capture.view.Traces;
import org.dutywright.workbench.session.CaptureSession;
import org.dutywright.workbench.session.Doing;
import org.dutywright.workbench.session.SessionState;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;

/** Shows how far a session is: the traces as soon as they can be drawn, before that and instead what is going on. */
public final class CaptureSheet extends Composite {
    private final CaptureSession session;
    private final Function<TracePlot, TraceControls.Listener> listeners;
    private final StackLayout stack = new StackLayout();
    private final NoticePage notice;
    private final Composite traces;
    private final NoticeBar bar;
    private Optional<TracePlot> plot = Optional.empty();
    private Optional<Capture> plotted = Optional.empty();

    /** A sheet for a session; each new plot gets a listener of its own. */
    public CaptureSheet(
            Composite parent, CaptureSession session, Function<TracePlot, TraceControls.Listener> listeners) {
        super(parent, SWT.NONE);
        this.session = session;
        this.listeners = listeners;
        setLayout(stack);
        notice = new NoticePage(this);
        traces = new Composite(this, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(traces);
        bar = new NoticeBar(traces);
    }

    /** The traces, where they are shown. */
    public Optional<TracePlot> plot() {
        return plot;
    }

    /** Looks at the session again. */
    public void refresh() {
        try {
            Optional<Capture> capture = session.capture();
            if (!capture.equals(plotted)) {
                plot.ifPresent(Control::dispose);
                plot = Optional.empty();
                plotted = Optional.empty();
            }
            if (capture.isPresent() && plot.isEmpty()) {
                draw(capture.get());
            }
            if (plot.isPresent()) {
                annotate(plot.get());
                show(traces);
            } else {
                explain();
                show(notice);
            }
        } catch (IOException | IllegalStateException e) {
            // The temporary file of the capture is gone, or was closed to be read anew, which refreshes again.
            notice.message(name(), String.valueOf(e.getMessage()), session::restart);
            show(notice);
        }
    }

    private void draw(Capture capture) throws IOException {
        List<Overview> overviews = new ArrayList<>();
        for (int i = 0; i < capture.channels().size(); i++) {
            session.overview(i).ifPresent(overviews::add);
        }
        if (overviews.size() < capture.channels().size() || capture.sampleCount() == 0) {
            return;
        }
        Traces source = Traces.of(capture, overviews);
        TracePlot fresh = new TracePlot(traces, new PlotModel(source, source.wholeView(), source.lanes()));
        GridDataFactory.fillDefaults().grab(true, true).applyTo(fresh);
        TraceControls.on(fresh, listeners.apply(fresh));
        plot = Optional.of(fresh);
        plotted = Optional.of(capture);
        traces.layout(true);
    }

    private void annotate(TracePlot shown) {
        shown.setEvents(session.measurement().map(CaptureMeasurement::channels).orElse(List.of()).stream()
                .map(ChannelMeasurement::events)
                .toList());
        SessionState state = session.state();
        switch (state.phase()) {
            case DONE -> bar.hide();
            case FAILED ->
                bar.say(
                        MessageFormat.format(Messages.notMeasured, state.message()),
                        Messages.measureAgain,
                        this::measureAgain);
            case CANCELLED -> bar.say(Messages.measuringCancelled, Messages.measureAgain, this::measureAgain);
            default ->
                bar.say(
                        MessageFormat.format(Messages.measuring, words(session.doing())),
                        Messages.cancel,
                        session::cancel);
        }
    }

    private void measureAgain() {
        session.measureWith(session.plans());
    }

    private void explain() {
        SessionState state = session.state();
        switch (state.phase()) {
            case FAILED ->
                notice.message(MessageFormat.format(Messages.notRead, name()), state.message(), session::restart);
            case CANCELLED ->
                notice.message(name(), MessageFormat.format(Messages.openingCancelled, name()), session::restart);
            case DONE -> notice.message(name(), Messages.nothingRecorded, session::restart);
            default -> {
                Doing doing = session.doing();
                notice.progress(
                        MessageFormat.format(Messages.opening, name()), words(doing), doing.share(), session::cancel);
            }
        }
    }

    private static String words(Doing doing) {
        OptionalDouble share = doing.share();
        return share.isPresent()
                ? MessageFormat.format(Messages.openingOf, doing.task(), Math.round(100 * share.getAsDouble()))
                : doing.task();
    }

    private String name() {
        return session.file().getName();
    }

    private void show(Control page) {
        if (stack.topControl != page) {
            boolean hadFocus = stack.topControl != null && isFocusInside(stack.topControl);
            stack.topControl = page;
            layout(true);
            if (hadFocus) {
                setFocus();
            }
        }
    }

    private boolean isFocusInside(Control page) {
        for (Control at = getDisplay().getFocusControl(); at != null; at = at.getParent()) {
            if (at == page) {
                return true;
            }
        }
        return false;
    }

    @Override
    public boolean setFocus() {
        return plot.map(shown -> shown.plot().forceFocus()).orElseGet(notice::setFocus);
    }
}
