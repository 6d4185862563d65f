// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.product.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.dutywright.simulation.DemoScenarios;
import org.dutywright.workbench.WorkbenchIds;
import org.dutywright.workbench.capture.CaptureEditor;
import org.dutywright.workbench.capture.internal.Mark;
import org.dutywright.workbench.capture.internal.TracePlot;
import org.dutywright.workbench.internal.DemonstrationJob;
import org.dutywright.workbench.internal.Jobs;
import org.dutywright.workbench.internal.StartPage;
import org.dutywright.workbench.pulse.PulseIds;
import org.dutywright.workbench.pulse.internal.CycleGrid;
import org.dutywright.workbench.session.CycleSelection;
import org.dutywright.workbench.session.Findings;
import org.dutywright.workbench.session.SpanSelection;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.Widgets;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IViewPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.handlers.IHandlerService;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The whole way of a person through the window: from nothing to the place of a fault. */
@WindowTest
final class WholeWayTest {
    private static final String CAPTURE = "vehicle-05-missing-pulses";
    private static final String SENSOR = "twin-pedal-200";
    private static final int CYCLE = 42;

    private final IWorkbenchPage page = JobDesk.page();

    @AfterEach
    void cleanUp() throws CoreException {
        JobDesk.tidy();
        demonstration().delete(true, true, null);
    }

    @Test
    void from_the_empty_workspace_to_the_place_of_a_fault() throws Exception {
        makeTheDemonstrationJob();
        IFile capture = demonstration().getFolder(Jobs.CAPTURES).getFile(CAPTURE + ".csv");
        CaptureEditor editor = open(capture);
        IViewPart view = page.showView(PulseIds.VIEW);
        CycleGrid cycles = JobDesk.cycles();

        chooseInTheTable(view, cycles, editor);
        chooseInTheTrace(editor, cycles);
        check(capture);
        goToTheFirstPlace(capture, editor);
    }

    private void makeTheDemonstrationJob() throws Exception {
        page.getWorkbenchWindow().getService(IHandlerService.class).executeCommand(WorkbenchIds.OPEN_START_PAGE, null);
        Widgets.press(Widgets.named(StartPage.DEMONSTRATION_BUTTON, Button.class));
        Pump.until(
                "the captures are simulated",
                () -> captures() == DemoScenarios.all().size());
    }

    private static long captures() {
        try {
            return demonstration().isOpen()
                    ? Arrays.stream(demonstration().getFolder(Jobs.CAPTURES).members())
                            .filter(file -> file.getName().endsWith(".csv"))
                            .count()
                    : 0;
        } catch (CoreException e) {
            // The folder is made while the test waits for it.
            return 0;
        }
    }

    private CaptureEditor open(IFile capture) throws CoreException {
        Explorer.openSelected(Explorer.select(capture));
        CaptureEditor editor = Pump.untilPresent(
                "the capture editor is open",
                () -> Optional.ofNullable(page.getActiveEditor())
                        .filter(CaptureEditor.class::isInstance)
                        .map(CaptureEditor.class::cast));
        JobDesk.traces(editor);
        return editor;
    }

    private void chooseInTheTable(IViewPart view, CycleGrid cycles, CaptureEditor editor) {
        page.activate(view);
        cycles.choose(CYCLE);

        CycleSelection chosen = (CycleSelection) ((IStructuredSelection) page.getSelection()).getFirstElement();
        assertThat(chosen.cycle()).isEqualTo(CYCLE);
        TracePlot plot = JobDesk.traces(editor);
        assertThat(plot.mark()).contains(new Mark(0, chosen.startSeconds(), chosen.endSeconds()));
        assertThat(plot.view().shown().touches(chosen.startSeconds(), chosen.endSeconds()))
                .isTrue();
    }

    private void chooseInTheTrace(CaptureEditor editor, CycleGrid cycles) {
        page.activate(editor);
        TracePlot plot = JobDesk.traces(editor);
        plot.showView(plot.view().closeTo(2.0, 2.004));
        JobDesk.traces(editor);
        JobDesk.click(
                plot.plot(),
                plot.timeScale().widthPixels() / 2,
                plot.laneLayout().lowPixel(1));

        Mark mark = plot.mark().orElseThrow();
        assertThat(Widgets.named(PulseIds.CHANNEL, Combo.class).getText()).isEqualTo("signal2");
        long row = cycles.row().orElseThrow();
        // the table prints the start with six digits after the point
        assertThat(cycles.text(1, row)).isEqualTo(String.format("%.6f s", mark.startSeconds()));
    }

    private static void check(IFile capture) throws Exception {
        // The dialog has an event loop of its own, in which this comes up.
        Display.getCurrent().asyncExec(() -> {
            Table sensors = Widgets.named(PulseIds.SENSORS, Table.class);
            sensors.select(Arrays.stream(sensors.getItems())
                    .map(item -> item.getText(0))
                    .toList()
                    .indexOf(SENSOR));
            sensors.getShell().getDefaultButton().notifyListeners(SWT.Selection, new Event());
        });
        Explorer.takeFromMenu(Explorer.select(capture), PulseIds.CHECK);

        Pump.until("the capture has markers", () -> !markers(capture).isEmpty());
        Label verdict = Widgets.named(PulseIds.VERDICT, Label.class);
        Pump.until(
                "the verdict is shown",
                () -> verdict.isVisible() && verdict.getText().contains("does not conform"));
    }

    private void goToTheFirstPlace(IFile capture, CaptureEditor editor) throws Exception {
        IMarker marker = markers(capture).stream()
                .filter(it -> it.getAttribute(Findings.ITEM, "").endsWith(".events.missing-pulse"))
                .findFirst()
                .orElseThrow();
        SpanSelection place = Findings.place(marker).orElseThrow();
        IViewPart problems = page.showView(IPageLayout.ID_PROBLEM_VIEW);

        Explorer.open((TreeViewer) problems.getSite().getSelectionProvider(), marker);

        TracePlot plot = JobDesk.traces(editor);
        assertThat(page.getActiveEditor()).isSameAs(editor);
        assertThat(plot.mark())
                .contains(new Mark(plot.laneOf(place.channel()), place.startSeconds(), place.endSeconds()));
        assertThat(plot.view().shown().touches(place.startSeconds(), place.endSeconds()))
                .isTrue();
        assertThat(plot.view().shown().spanSeconds())
                .isLessThan(plot.view().whole().spanSeconds() / 10);
    }

    private static List<IMarker> markers(IFile capture) {
        try {
            return Arrays.asList(capture.findMarkers(Findings.MARKER, true, IResource.DEPTH_ZERO));
        } catch (CoreException e) {
            throw new AssertionError(e);
        }
    }

    private static IProject demonstration() {
        return ResourcesPlugin.getWorkspace().getRoot().getProject(DemonstrationJob.PROJECT);
    }
}
