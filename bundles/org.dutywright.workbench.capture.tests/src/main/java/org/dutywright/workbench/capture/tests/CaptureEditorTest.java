// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.tests;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.workbench.capture.CaptureEditor;
import org.dutywright.workbench.capture.internal.Mark;
import org.dutywright.workbench.capture.internal.NoticePage;
import org.dutywright.workbench.capture.internal.TracePlot;
import org.dutywright.workbench.capture.view.TimeWindow;
import org.dutywright.workbench.session.CaptureSession;
import org.dutywright.workbench.session.CaptureSessions;
import org.dutywright.workbench.session.CycleSelection;
import org.dutywright.workbench.session.Findings;
import org.dutywright.workbench.session.SpanSelection;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.Widgets;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.ide.IDE;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The editor draws a capture, and is led and leads by the platform's selection. */
@WindowTest
final class CaptureEditorTest {
    private static final String SOUND = "vehicle-03-released";
    private static final String FAULTY = "vehicle-05-missing-pulses";

    private CaptureDesk desk;

    @BeforeEach
    void setUp() throws CoreException {
        desk = new CaptureDesk();
    }

    @AfterEach
    void cleanUp() throws CoreException {
        desk.close();
    }

    @Test
    void a_double_click_on_a_capture_shows_both_traces() throws Exception {
        CaptureEditor editor = desk.openWhole(desk.simulate(SOUND));
        TracePlot plot = CaptureDesk.awaitTraces(editor);

        assertThat(plot.view().shown()).isEqualTo(plot.view().whole());
        for (int lane = 0; lane < 2; lane++) {
            long inLane = pixels(
                    plot.plot(),
                    plot.colourOf(lane).getRGB(),
                    plot.laneLayout().top(lane),
                    plot.laneLayout().bottom(lane));
            // each column of pixels has at least one of its lane's trace
            assertThat(inLane)
                    .as("lane %d", lane)
                    .isGreaterThan(plot.timeScale().widthPixels() / 2);
            assertThat(pixels(
                            plot.plot(),
                            plot.colourOf(1 - lane).getRGB(),
                            plot.laneLayout().top(lane),
                            plot.laneLayout().bottom(lane)))
                    .as("of the other trace in lane %d", lane)
                    .isZero();
        }
    }

    @Test
    void a_click_in_a_trace_chooses_the_cycle_under_the_pointer() throws Exception {
        IFile file = desk.simulate(SOUND);
        CaptureEditor editor = desk.openWhole(file);
        TracePlot plot = CaptureDesk.awaitTraces(editor);
        plot.showView(plot.view().closeTo(1.0, 1.004));
        plot = CaptureDesk.awaitTraces(editor);
        int x = plot.timeScale().widthPixels() / 2;
        double pointed = plot.timeScale().secondsAt(x + 0.5);

        CaptureDesk.click(plot.plot(), x, plot.laneLayout().lowPixel(1));

        CycleSelection chosen = selected(editor, CycleSelection.class);
        assertThat(chosen.file()).isEqualTo(file);
        assertThat(chosen.channel()).isEqualTo("signal2");
        assertThat(pointed).isBetween(chosen.startSeconds(), chosen.endSeconds());
        // the demonstration sensor's carrier is 200 Hz within 5 %
        assertThat(chosen.endSeconds() - chosen.startSeconds()).isCloseTo(0.005, within(0.00025));
        assertThat(plot.mark()).contains(new Mark(1, chosen.startSeconds(), chosen.endSeconds()));
    }

    @Test
    void a_cycle_chosen_elsewhere_is_marked_and_brought_into_sight() throws Exception {
        IFile file = desk.simulate(SOUND);
        CaptureEditor editor = desk.openWhole(file);
        TracePlot plot = CaptureDesk.awaitTraces(editor);
        double end = plot.view().whole().endSeconds();
        plot.showView(plot.view().closeTo(end - 0.01, end - 0.005));
        TimeWindow before = plot.view().shown();

        Elsewhere.choose(new CycleSelection(file, "signal1", 20, 0.1, 0.105));

        assertThat(plot.mark()).contains(new Mark(0, 0.1, 0.105));
        assertThat(plot.view().shown().touches(0.1, 0.105)).isTrue();
        assertThat(plot.view().shown().spanSeconds()).isCloseTo(before.spanSeconds(), within(1e-9));
    }

    @Test
    void a_cycle_of_another_capture_is_none_of_its_business() throws Exception {
        IFile other = desk.write("other.csv", "time (s),signal1 (V)\n0,0\n1,5\n2,0\n");
        CaptureEditor editor = desk.openWhole(desk.simulate(SOUND));

        Elsewhere.choose(new SpanSelection(other, "signal1", 0.1, 0.2, "elsewhere"));

        assertThat(CaptureDesk.awaitTraces(editor).mark()).isEmpty();
    }

    @Test
    void the_flag_of_an_event_chooses_its_place() throws Exception {
        IFile file = desk.simulate(FAULTY);
        CaptureEditor editor = desk.openWhole(file);
        PulseEvent event = firstEvent(file);
        TracePlot plot = CaptureDesk.awaitTraces(editor);
        plot.showView(plot.view().closeTo(event.startSeconds() - 0.05, event.startSeconds() + 0.05));
        plot = CaptureDesk.awaitTraces(editor);

        CaptureDesk.click(
                plot.plot(),
                plot.timeScale().pixelAt(event.startSeconds()) + 4,
                plot.laneLayout().top(0) + 6);

        SpanSelection chosen = selected(editor, SpanSelection.class);
        assertThat(chosen.startSeconds()).isEqualTo(event.startSeconds());
        assertThat(chosen.text()).startsWith(event.kind().word());
    }

    @Test
    void a_marker_leads_to_its_place() throws Exception {
        IFile file = desk.simulate(SOUND);
        IMarker marker = file.createMarker(Findings.MARKER);
        marker.setAttributes(
                Map.of(Findings.CHANNEL, "signal2", Findings.START_SECONDS, "0.5", Findings.END_SECONDS, "0.505"));

        CaptureEditor editor = (CaptureEditor) IDE.openEditor(CaptureDesk.page(), marker);
        TracePlot plot = CaptureDesk.awaitTraces(editor);

        assertThat(plot.mark()).contains(new Mark(1, 0.5, 0.505));
        assertThat(plot.view().shown().spanSeconds()).isCloseTo(0.05, within(1e-9));
        assertThat(plot.view().shown().middleSeconds()).isCloseTo(0.5025, within(1e-9));
    }

    @Test
    void wheel_drag_and_keys_move_through_the_capture() throws Exception {
        CaptureEditor editor = desk.openWhole(desk.simulate(SOUND));
        TracePlot plot = CaptureDesk.awaitTraces(editor);
        Control control = plot.plot();
        double pointed = plot.timeScale().secondsAt(200);

        for (int i = 0; i < 10; i++) {
            CaptureDesk.wheel(control, 200, 3);
        }
        // half a pixel: pixels are whole
        assertThat(plot.timeScale().pixelAt(pointed)).isBetween(199, 201);
        assertThat(plot.view().shown().spanSeconds())
                .isLessThan(plot.view().whole().spanSeconds() / 5);

        TimeWindow zoomed = plot.view().shown();
        double dragged = plot.timeScale().secondsPerPixel() * 50;
        CaptureDesk.mouse(control, SWT.MouseDown, 300, 20);
        CaptureDesk.mouse(control, SWT.MouseMove, 250, 20);
        CaptureDesk.mouse(control, SWT.MouseUp, 250, 20);
        assertThat(plot.view().shown().startSeconds())
                .isCloseTo(zoomed.startSeconds() + dragged, within(dragged * 1e-6));
        assertThat(editor.getSite().getSelectionProvider().getSelection().isEmpty())
                .isTrue();

        CaptureDesk.key(control, SWT.ARROW_LEFT, '\0');
        assertThat(plot.view().shown().startSeconds()).isLessThan(zoomed.startSeconds() + dragged);
        CaptureDesk.key(control, '-', '-');
        assertThat(plot.view().shown().spanSeconds()).isGreaterThan(zoomed.spanSeconds());
        CaptureDesk.key(control, SWT.HOME, '\0');
        assertThat(plot.view().shown()).isEqualTo(plot.view().whole());
        assertThat(CaptureDesk.awaitTraces(editor).isUpToDate()).isTrue();
    }

    @Test
    void opening_can_be_cancelled_and_begun_again() throws Exception {
        IFile file = desk.simulate(SOUND);
        CaptureEditor editor = desk.open(file);
        Button button = Widgets.named(NoticePage.BUTTON, Button.class);

        Widgets.press(button);

        Text words = Widgets.named(NoticePage.WORDS, Text.class);
        Pump.until(
                "the editor says that it was cancelled", () -> words.getText().contains("cancelled"));
        assertThat(editor.getAdapter(TracePlot.class)).isNull();
        Widgets.press(button);
        assertThat(CaptureDesk.awaitTraces(editor).isUpToDate()).isTrue();
    }

    @Test
    void a_file_that_cannot_be_read_is_explained_in_the_editor() throws Exception {
        IFile file = desk.write("broken.csv", "time (s),signal1 (V)\n0,1\n1,x\n2,1\n");

        desk.open(file);

        Text words = Widgets.named(NoticePage.WORDS, Text.class);
        Pump.until("the editor says what is wrong", () -> words.getText().contains("line 3"));
        assertThat(words.isVisible()).isTrue();
    }

    @Test
    void a_changed_file_is_drawn_anew() throws Exception {
        IFile file = desk.write("changing.csv", "time (s),signal1 (V)\n0,0\n1,5\n2,0\n");
        CaptureEditor editor = desk.open(file);
        TracePlot before = CaptureDesk.awaitTraces(editor);

        file.setContents(
                new ByteArrayInputStream("time (s),signal1 (V)\n0,0\n1,5\n2,0\n3,5\n".getBytes(StandardCharsets.UTF_8)),
                true,
                false,
                null);

        Pump.until("there is a new plot", before::isDisposed);
        assertThat(CaptureDesk.awaitTraces(editor).view().whole().endSeconds()).isEqualTo(3);
    }

    private static <T> T selected(CaptureEditor editor, Class<T> type) {
        Object first =
                ((IStructuredSelection) editor.getSite().getSelectionProvider().getSelection()).getFirstElement();
        assertThat(first).isInstanceOf(type);
        return type.cast(first);
    }

    private static PulseEvent firstEvent(IFile file) {
        CaptureSession session = CaptureSessions.acquire(file);
        try {
            List<PulseEvent> events =
                    session.measurement().orElseThrow().channels().get(0).events();
            return events.getFirst();
        } finally {
            CaptureSessions.release(session);
        }
    }

    private static long pixels(Control control, RGB colour, int top, int bottom) {
        Image image = new Image(control.getDisplay(), control.getSize().x, control.getSize().y);
        GC gc = new GC(control);
        try {
            gc.copyArea(image, 0, 0);
            ImageData data = image.getImageData();
            long count = 0;
            for (int y = top; y < bottom; y++) {
                for (int x = 0; x < data.width; x++) {
                    count += data.palette.getRGB(data.getPixel(x, y)).equals(colour) ? 1 : 0;
                }
            }
            return count;
        } finally {
            gc.dispose();
            image.dispose();
        }
    }
}
