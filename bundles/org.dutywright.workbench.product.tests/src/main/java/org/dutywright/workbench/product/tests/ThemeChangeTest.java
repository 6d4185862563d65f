// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.product.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.dutywright.workbench.capture.CaptureEditor;
import org.dutywright.workbench.pulse.PulseIds;
import org.dutywright.workbench.tests.kit.Pixels;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.Screens;
import org.dutywright.workbench.tests.kit.Theme;
import org.dutywright.workbench.tests.kit.Widgets;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.e4.ui.model.application.ui.basic.MPart;
import org.eclipse.nebula.widgets.nattable.NatTable;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.part.FileEditorInput;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A change of the theme reaches all parts that are open, as seen on the screen. */
@WindowTest
final class ThemeChangeTest {
    private static final String TEXT_EDITOR = "org.eclipse.ui.DefaultTextEditor";
    private static final List<Theme> CHANGES = List.of(Theme.DARK, Theme.LIGHT, Theme.DARK, Theme.LIGHT);
    private static final int WIDTH = 1280;
    private static final int HEIGHT = 800;

    private JobDesk desk;
    private List<IWorkbenchPart> parts;

    @BeforeEach
    void openParts() throws Exception {
        desk = new JobDesk("themes");
        CaptureEditor editor = JobDesk.open(desk.simulate("vehicle-05-missing-pulses"));
        IWorkbenchPage page = JobDesk.page();
        IWorkbenchPart view = page.showView(PulseIds.VIEW);
        JobDesk.cycles();
        IWorkbenchPart text = open("note.txt");
        parts = List.of(
                page.showView(IPageLayout.ID_PROJECT_EXPLORER),
                page.showView(IPageLayout.ID_PROBLEM_VIEW),
                view,
                text,
                editor);
    }

    @AfterEach
    void cleanUp() throws Exception {
        Theme.LIGHT.use();
        desk.close();
    }

    @Test
    void every_open_part_takes_the_colours_of_a_theme_that_is_put_on() {
        for (Theme theme : CHANGES) {
            theme.use();
            for (IWorkbenchPart part : parts) {
                JobDesk.page().activate(part);
                Pump.until(
                        "something of " + part.getTitle() + " is in sight",
                        () -> !controls(part).isEmpty());
                controls(part).forEach(control -> awaitColours(control, theme, part.getTitle()));
            }
            Screens.take(parts.getFirst().getSite().getShell(), WIDTH, HEIGHT, "changed-to-" + theme);
        }
    }

    @Test
    void a_text_opened_after_a_change_is_in_the_new_colours() throws Exception {
        Theme.DARK.use();
        Theme.LIGHT.use();

        IWorkbenchPart text = open("later.txt");

        controls(text).forEach(control -> awaitColours(control, Theme.LIGHT, text.getTitle()));
    }

    private IWorkbenchPart open(String note) throws CoreException {
        return JobDesk.page()
                .openEditor(
                        new FileEditorInput(desk.write(note, "Measured at the pedal, engine off.\nCold.\n")),
                        TEXT_EDITOR);
    }

    private static void awaitColours(Control control, Theme theme, String title) {
        Supplier<String> found =
                () -> Pixels.of(control) + ", said to be " + control.getForeground() + " on " + control.getBackground();
        String what = control.getClass().getSimpleName() + " of " + title;
        Optional<String> last = Pump.lastUntil(
                found,
                () -> Pixels.of(control).haveGroundOf(theme)
                        && Pixels.of(control).areLegible());
        assertThat(last).as("pixels of the %s that is not %s", what, theme).isEmpty();
    }

    /** What of a part has text and a ground of its own and is in sight. */
    private static List<Control> controls(IWorkbenchPart part) {
        Composite area = (Composite) part.getSite().getService(MPart.class).getWidget();
        Stream<Control> inside = Widgets.withChildren(area).filter(ThemeChangeTest::isTelling);
        // the plot itself is full of trace, its scales are not
        Stream<Control> scales = Stream.of("capture.scale", "capture.time")
                .flatMap(name -> Widgets.find(name, Control.class).stream())
                .filter(scale -> part instanceof CaptureEditor);
        return Stream.concat(inside, scales)
                .filter(Control::isVisible)
                .filter(control -> !control.getSize().equals(new Point(0, 0)))
                .toList();
    }

    private static boolean isTelling(Control control) {
        return control instanceof StyledText
                || control instanceof NatTable
                || control instanceof Table
                || control instanceof Combo
                || control instanceof Tree tree && tree.getItemCount() > 0
                || control instanceof Label label && !label.getText().isEmpty()
                || control instanceof ToolBar bar && bar.getItemCount() > 0;
    }
}
