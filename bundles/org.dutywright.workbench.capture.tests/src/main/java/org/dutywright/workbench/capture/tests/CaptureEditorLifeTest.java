// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.workbench.capture.CaptureEditor;
import org.dutywright.workbench.capture.internal.NoticeBar;
import org.dutywright.workbench.capture.internal.NoticePage;
import org.dutywright.workbench.capture.internal.TracePlot;
import org.dutywright.workbench.session.CaptureSession;
import org.dutywright.workbench.session.CaptureSessions;
import org.dutywright.workbench.session.SessionState.Phase;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.Widgets;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CLabel;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.ide.IDE;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How the editor comes, is cancelled and goes, and what it says on the way. */
@WindowTest
final class CaptureEditorLifeTest {
    private static final String SOUND = "vehicle-03-released";
    private static final String SMALL = "time (s),signal1 (V)\n0,0\n1,5\n2,0\n3,5\n4,0\n";
    /** Another way to measure than the usual one, so that it is done anew. */
    private static final Map<String, ChannelPlan> ACTIVE_LOW = Map.of(
            "signal1",
            new ChannelPlan(Optional.empty(), Optional.of(ActiveLevel.LOW), Optional.empty(), OptionalDouble.empty()));

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
    void the_status_line_tells_what_is_under_the_pointer() throws Exception {
        CaptureEditor editor = desk.open(desk.write("small.csv", SMALL));
        TracePlot plot = CaptureDesk.awaitTraces(editor);
        int y = plot.laneLayout().lowPixel(0);

        CaptureDesk.mouse(plot.plot(), SWT.MouseMove, plot.timeScale().pixelAt(3), y);
        assertThat(statusLine(editor).split("\\s{2,}")).containsExactly("signal1", "3.000 s", "5.000 V");

        CaptureDesk.mouse(plot.plot(), SWT.MouseExit, 0, 0);
        assertThat(statusLine(editor)).isEmpty();
    }

    @Test
    void the_status_line_tells_of_the_cycle_that_is_chosen() throws Exception {
        CaptureEditor editor = desk.openWhole(desk.simulate(SOUND));
        TracePlot plot = CaptureDesk.awaitTraces(editor);

        CaptureDesk.click(
                plot.plot(),
                plot.timeScale().widthPixels() / 2,
                plot.laneLayout().lowPixel(1));

        assertThat(statusLine(editor)).startsWith("signal2").contains("cycle ").contains("duty ");
    }

    @Test
    void measuring_cancelled_from_outside_leaves_the_traces_and_can_be_done_again() throws Exception {
        IFile file = desk.simulate(SOUND);
        CaptureEditor editor = desk.openWhole(file);
        CaptureSession session = CaptureSessions.acquire(file);
        try {
            session.measureWith(ACTIVE_LOW);
            // what the Progress view does
            Arrays.stream(Job.getJobManager().find(file)).forEach(Job::cancel);

            Label words = Widgets.named(NoticeBar.WORDS, Label.class);
            Pump.until(
                    "the editor says that measuring was cancelled",
                    () -> words.isVisible() && words.getText().contains("cancelled"));
            assertThat(session.state().phase()).isEqualTo(Phase.CANCELLED);
            assertThat(editor.getAdapter(TracePlot.class)).isNotNull();

            Widgets.press(Widgets.named(NoticeBar.BUTTON, Button.class));
            Pump.until(
                    "the capture is measured after all", () -> session.state().phase() == Phase.DONE);
            Pump.until("the editor has nothing more to say", () -> !words.isVisible());
            assertThat(session.plans()).isEqualTo(ACTIVE_LOW);
        } finally {
            CaptureSessions.release(session);
        }
    }

    @Test
    void closing_the_editor_ends_the_work_and_closes_the_capture() throws Exception {
        IFile file = desk.simulate(SOUND);
        CaptureEditor editor = desk.openWhole(file);
        TracePlot plot = CaptureDesk.awaitTraces(editor);
        CaptureSession session = CaptureSessions.acquire(file);
        session.measureWith(ACTIVE_LOW);
        CaptureSessions.release(session);

        CaptureDesk.page().closeEditor(editor, false);

        assertThat(plot.isDisposed()).isTrue();
        Pump.until("no work is left", () -> Job.getJobManager().find(file).length == 0);
        assertThat(session.capture()).isEmpty();
        assertThat(session.measurement()).isEmpty();
    }

    @Test
    void an_editor_closed_while_it_opens_leaves_no_work_behind() throws Exception {
        IFile file = desk.simulate(SOUND);

        CaptureDesk.page().closeEditor(desk.open(file), false);

        Pump.until("no work is left", () -> Job.getJobManager().find(file).length == 0);
        assertThat(Widgets.find(NoticePage.WORDS, Text.class)).isEmpty();
    }

    @Test
    void a_table_that_ends_in_txt_opens_as_a_capture_and_a_note_as_a_text() throws Exception {
        IEditorPart table = IDE.openEditor(CaptureDesk.page(), desk.write("export.txt", SMALL));
        IEditorPart note = IDE.openEditor(
                CaptureDesk.page(), desk.write("note.txt", "Measured at the pedal, engine off.\nCold.\n"));

        assertThat(table).isInstanceOf(CaptureEditor.class);
        assertThat(note).isNotInstanceOf(CaptureEditor.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"store.arrow", "sound.wav", "array.npy"})
    void a_recording_in_another_format_shows_its_traces(String name) throws Exception {
        CaptureEditor editor = desk.open(desk.convert(SOUND, name));

        TracePlot plot = CaptureDesk.awaitTraces(editor);

        assertThat(editor.getTitle()).isEqualTo(name);
        assertThat(plot.view().whole().endSeconds()).isPositive();
    }

    @Test
    void settings_with_the_ending_of_a_recording_open_as_a_text() throws Exception {
        IEditorPart settings = IDE.openEditor(CaptureDesk.page(), desk.write("tool.cfg", "[window]\nwidth=300\n"));

        assertThat(settings).isNotInstanceOf(CaptureEditor.class);
    }

    @Test
    void a_table_that_was_opened_with_another_editor_stays_there() throws Exception {
        IFile file = desk.write("export.txt", SMALL);
        IDE.setDefaultEditor(file, "org.eclipse.ui.DefaultTextEditor");

        assertThat(IDE.openEditor(CaptureDesk.page(), file)).isNotInstanceOf(CaptureEditor.class);
    }

    /** The message left in the window's status line; the platform gives its field no name. */
    private static String statusLine(CaptureEditor editor) {
        return Widgets.withChildren(editor.getSite().getShell())
                .filter(CLabel.class::isInstance)
                .filter(label -> isStatusLine(label.getParent()))
                .map(label -> ((CLabel) label).getText())
                .findFirst()
                .map(text -> text == null ? "" : text)
                .orElseThrow();
    }

    private static boolean isStatusLine(Control control) {
        return control.getClass().getSimpleName().equals("StatusLine");
    }
}
