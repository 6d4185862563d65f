// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.product.tests;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.Map;
import org.dutywright.workbench.capture.CaptureEditor;
import org.dutywright.workbench.capture.internal.TracePlot;
import org.dutywright.workbench.pulse.PulseIds;
import org.dutywright.workbench.pulse.internal.CheckJob;
import org.dutywright.workbench.pulse.internal.CycleGrid;
import org.dutywright.workbench.tests.kit.Pixels;
import org.dutywright.workbench.tests.kit.Screens;
import org.dutywright.workbench.tests.kit.Theme;
import org.dutywright.workbench.tests.kit.Widgets;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.core.commands.ParameterizedCommand;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IViewPart;
import org.eclipse.ui.IWorkbenchPart2;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.commands.ICommandService;
import org.eclipse.ui.handlers.IHandlerService;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pictures of the window at work for a person to look at, in both themes and three sizes. */
@WindowTest
final class WindowPicturesTest {
    private static final int CYCLE = 5;
    private static final String SENSOR = "twin-pedal-200";

    private JobDesk desk;

    @BeforeEach
    void setUp() throws Exception {
        desk = new JobDesk("Complaint 12");
    }

    @AfterEach
    void cleanUp() throws Exception {
        Theme.LIGHT.use();
        desk.close();
    }

    @ParameterizedTest
    @CsvSource({
        "LIGHT, 1024, 768",
        "LIGHT, 1280, 800",
        "DARK, 1280, 800",
        "LIGHT, 1920, 1080",
        "DARK, 1920, 1080",
        "DARK, 1024, 768"
    })
    void the_window_at_work(Theme theme, int width, int height) throws Exception {
        assumeTrue(Screens.hasRoomFor(width, height), "the screen is smaller than " + width + " x " + height);
        CaptureEditor editor = JobDesk.open(desk.simulate("vehicle-05-missing-pulses"));
        IViewPart view = JobDesk.page().showView(PulseIds.VIEW);
        CycleGrid cycles = JobDesk.cycles();
        theme.use();
        Shell shell = view.getSite().getShell();
        TracePlot plot = JobDesk.traces(editor);
        plot.showView(plot.view().closeTo(0.02, 0.04));
        cycles.choose(CYCLE);

        Path measured = Screens.take(
                shell,
                width,
                height,
                "measured-" + theme,
                () -> isMarked(plot) && cycles.row().isPresent());
        check(view.getSite().getWorkbenchWindow());
        CTabFolder tabs = Widgets.named(PulseIds.TABS, CTabFolder.class);
        Label verdict = Widgets.named(PulseIds.VERDICT, Label.class);
        Path checked = Screens.take(
                shell,
                width,
                height,
                "checked-" + theme,
                () -> tabs.getSelectionIndex() == 1
                        && verdict.getText().contains("does not conform")
                        && Job.getJobManager().find(CheckJob.FAMILY).length == 0);
        IViewPart problems = JobDesk.page().showView(IPageLayout.ID_PROBLEM_VIEW);
        TreeViewer markers = (TreeViewer) problems.getSite().getSelectionProvider();
        // the platform counts them a moment after it lists them
        Path findings = Screens.take(
                shell,
                width,
                height,
                "findings-" + theme,
                () -> isExpanded(markers) && isCounted((IWorkbenchPart2) problems));

        // A window that failed to paint shows a handful of colours; text alone, smoothed, brings dozens.
        assertThat(Screens.colours(measured)).isGreaterThan(50);
        assertThat(Screens.colours(checked)).isGreaterThan(50);
        assertThat(Screens.colours(findings)).isGreaterThan(50);
    }

    private static boolean isMarked(TracePlot plot) {
        return plot.isUpToDate() && plot.mark().isPresent();
    }

    private static boolean isCounted(IWorkbenchPart2 problems) {
        return problems.getContentDescription().startsWith("5 errors");
    }

    private static boolean isExpanded(TreeViewer markers) {
        Tree tree = markers.getTree();
        if (tree.getItemCount() == 0) {
            return false;
        }
        // Once only: each time makes it paint anew, and it would never come to an end.
        if (!tree.getItem(0).getExpanded()) {
            markers.expandAll();
        }
        return tree.getItem(0).getExpanded()
                && tree.getItem(0).getItemCount() > 0
                && Pixels.of(tree, tree.getItem(0).getItem(0).getBounds(0)).areLegible();
    }

    private static void check(IWorkbenchWindow window) throws CommandException {
        ParameterizedCommand ready = ParameterizedCommand.generateCommand(
                window.getService(ICommandService.class).getCommand(PulseIds.CHECK),
                Map.of(PulseIds.CHECK_SENSOR, SENSOR));
        window.getService(IHandlerService.class).executeCommand(ready, null);
    }
}
