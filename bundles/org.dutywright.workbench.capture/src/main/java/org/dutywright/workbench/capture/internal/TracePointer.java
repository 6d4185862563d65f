// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import java.io.IOException;
import java.text.MessageFormat;
import java.util.Optional;
import java.util.function.Consumer;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.units.UnitPrinter;
import org.dutywright.workbench.capture.view.CycleFinder;
import org.dutywright.workbench.capture.view.Flag;
import org.dutywright.workbench.capture.view.Lane;
import org.dutywright.workbench.capture.view.Reading;
import org.dutywright.workbench.capture.view.Ticks;
import org.dutywright.workbench.session.CaptureSession;
import org.dutywright.workbench.session.CycleSelection;
import org.dutywright.workbench.session.SpanSelection;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.action.IStatusLineManager;
import org.eclipse.jface.viewers.ISelection;
import org.eclipse.jface.viewers.StructuredSelection;

/** Says what is under the pointer, and chooses the cycle or the event that is clicked. */
public final class TracePointer implements TraceControls.Listener {
    private static final int VALUE_DIGITS = 4;
    private static final int CYCLE_DIGITS = 5;

    private final TracePlot plot;
    private final CaptureSession session;
    private final Consumer<ISelection> chosen;
    private final IStatusLineManager status;

    /** A pointer on a plot; what is clicked becomes a selection. */
    public TracePointer(
            TracePlot plot, CaptureSession session, Consumer<ISelection> chosen, IStatusLineManager status) {
        this.plot = plot;
        this.session = session;
        this.chosen = chosen;
        this.status = status;
    }

    @Override
    public void hovered(int lane, int x) {
        Lane about = plot.model().lanes().get(lane);
        double seconds = secondsAt(x);
        try {
            Optional<Reading> reading = plot.model().traces().reading(lane, seconds);
            status.setMessage(
                    reading.isPresent()
                            ? MessageFormat.format(
                                    Messages.readingAt,
                                    about.name(),
                                    time(reading.get().seconds()),
                                    UnitPrinter.print(reading.get().value(), about.unit(), VALUE_DIGITS))
                            : MessageFormat.format(Messages.gapAt, about.name(), time(seconds)));
        } catch (IOException | IllegalStateException e) {
            // The capture is being closed to be read anew: for a moment nothing is under the pointer.
            left();
        }
    }

    @Override
    public void left() {
        status.setMessage("");
    }

    @Override
    public void clicked(int lane, int x, int y) {
        Optional<Flag> flag = plot.flagAt(lane, x, y);
        if (flag.isPresent()) {
            choose(lane, flag.get().event());
            return;
        }
        Optional<Cycle> cycle = session.measurement()
                .map(measured -> measured.channels().get(lane))
                .flatMap(channel -> cycleAt(channel, secondsAt(x)));
        if (cycle.isPresent()) {
            choose(lane, cycle.get());
        } else {
            plot.setMark(Optional.empty());
            chosen.accept(StructuredSelection.EMPTY);
        }
    }

    private static Optional<Cycle> cycleAt(ChannelMeasurement channel, double seconds) {
        try {
            return CycleFinder.at(channel.cycles(), seconds);
        } catch (IOException | IllegalStateException e) {
            ILog.of(TracePointer.class).warn("The cycles could not be read.", e);
            return Optional.empty();
        }
    }

    private void choose(int lane, Cycle cycle) {
        plot.setMark(Optional.of(new Mark(lane, cycle.startSeconds(), cycle.endSeconds())));
        String channel = plot.model().lanes().get(lane).name();
        chosen.accept(new StructuredSelection(
                new CycleSelection(session.file(), channel, cycle.index(), cycle.startSeconds(), cycle.endSeconds())));
        status.setMessage(MessageFormat.format(
                Messages.cycleChosen,
                channel,
                Long.toString(cycle.index()),
                time(cycle.startSeconds()),
                UnitPrinter.print(cycle.frequencyHz(), "Hz", CYCLE_DIGITS),
                UnitPrinter.print(cycle.dutyPercent(), "%", CYCLE_DIGITS)));
    }

    private void choose(int lane, PulseEvent event) {
        plot.setMark(Optional.of(new Mark(lane, event.startSeconds(), event.endSeconds())));
        String text = event.kind().word() + ": " + event.detail();
        chosen.accept(new StructuredSelection(new SpanSelection(
                session.file(),
                plot.model().lanes().get(lane).name(),
                event.startSeconds(),
                event.endSeconds(),
                text)));
        status.setMessage(text);
    }

    // the middle of the pixel, for its edge may belong to the neighbour
    private double secondsAt(int x) {
        return plot.timeScale().secondsAt(x + 0.5);
    }

    private String time(double seconds) {
        return new Ticks(plot.timeScale().secondsPerPixel(), "s").label(seconds);
    }
}
