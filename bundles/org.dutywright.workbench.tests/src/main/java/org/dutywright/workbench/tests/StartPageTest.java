// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Optional;
import org.dutywright.simulation.DemoScenarios;
import org.dutywright.workbench.WorkbenchIds;
import org.dutywright.workbench.internal.DemonstrationJob;
import org.dutywright.workbench.internal.Jobs;
import org.dutywright.workbench.internal.StartPage;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.Widgets;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.swt.widgets.Button;
import org.eclipse.ui.IEditorReference;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** What a person meets in an empty workspace, and the way on from there. */
@WindowTest
final class StartPageTest {
    private final IWorkbenchPage page =
            PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();

    @AfterEach
    void cleanUp() throws CoreException {
        demonstration().delete(true, true, null);
        page.closeAllEditors(false);
    }

    @Test
    void the_command_opens_the_start_page_once() throws Exception {
        open();
        open();

        assertThat(Arrays.stream(page.getEditorReferences()).map(IEditorReference::getId))
                .containsExactly(WorkbenchIds.START_PAGE);
    }

    @Test
    void the_button_makes_the_demonstration_job_with_a_capture_for_every_scenario() throws Exception {
        open();

        Widgets.press(Widgets.named(StartPage.DEMONSTRATION_BUTTON, Button.class));

        int scenarios = DemoScenarios.all().size();
        Pump.until("there are " + scenarios + " captures", () -> captures() == scenarios);
        assertThat(demonstration().hasNature(WorkbenchIds.JOB_NATURE)).isTrue();
    }

    @Test
    void a_cancelled_demonstration_leaves_no_half_of_a_capture_and_the_next_one_goes_on() throws Exception {
        DemonstrationJob job = new DemonstrationJob();
        NullProgressMonitor cancelled = new NullProgressMonitor();
        Jobs.create(DemonstrationJob.PROJECT, Optional.empty(), null);
        cancelled.setCanceled(true);

        IStatus status = outcome(job, cancelled);

        assertThat(status.getSeverity()).isEqualTo(IStatus.CANCEL);
        assertThat(captures()).isZero();
    }

    private static IStatus outcome(DemonstrationJob job, NullProgressMonitor monitor) throws CoreException {
        try {
            return job.runInWorkspace(monitor);
        } catch (org.eclipse.core.runtime.OperationCanceledException e) {
            return org.eclipse.core.runtime.Status.CANCEL_STATUS;
        }
    }

    private static void open() throws Exception {
        PlatformUI.getWorkbench().getService(IHandlerService.class).executeCommand(WorkbenchIds.OPEN_START_PAGE, null);
    }

    private static IProject demonstration() {
        return ResourcesPlugin.getWorkspace().getRoot().getProject(DemonstrationJob.PROJECT);
    }

    private static long captures() {
        try {
            IResource[] files = demonstration().isOpen()
                    ? demonstration().getFolder(Jobs.CAPTURES).members()
                    : new IResource[0];
            return Arrays.stream(files)
                    .filter(file -> "csv".equals(file.getFileExtension()))
                    .count();
        } catch (CoreException e) {
            return 0;
        }
    }
}
