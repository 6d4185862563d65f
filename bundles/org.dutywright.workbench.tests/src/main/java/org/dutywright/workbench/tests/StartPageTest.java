// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.dutywright.simulation.DemoScenarios;
import org.dutywright.workbench.WorkbenchIds;
import org.dutywright.workbench.internal.DemonstrationJob;
import org.dutywright.workbench.internal.Jobs;
import org.dutywright.workbench.internal.StartPage;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.Widgets;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.core.resources.IFile;
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
        IStatus cancelled = new DemonstrationJob().runInWorkspace(new CancellingMonitor(2));

        assertThat(cancelled.getSeverity()).isEqualTo(IStatus.CANCEL);
        long done = captures();
        assertThat(done).isLessThan(DemoScenarios.all().size());
        assertThat(filesIn(Jobs.CAPTURES))
                .as("each capture with its truth, and nothing begun")
                .hasSize(2 * (int) done);

        IStatus finished = new DemonstrationJob().runInWorkspace(new NullProgressMonitor());

        assertThat(finished.isOK()).isTrue();
        assertThat(captures()).isEqualTo(DemoScenarios.all().size());
    }

    @Test
    void what_a_user_made_of_a_demonstration_capture_is_kept() throws Exception {
        IProject project = Jobs.create(DemonstrationJob.PROJECT, Optional.empty(), new NullProgressMonitor());
        IFile capture = project.getFolder(Jobs.CAPTURES)
                .getFile(DemoScenarios.all().getFirst().name() + ".csv");
        capture.create("changed".getBytes(StandardCharsets.UTF_8), IResource.NONE, null);

        new DemonstrationJob().runInWorkspace(new NullProgressMonitor());

        assertThat(capture.readString()).isEqualTo("changed");
    }

    /** Wants to stop as soon as a number of captures are on disk, in the midst of the next one. */
    private static final class CancellingMonitor extends NullProgressMonitor {
        private final int captures;

        CancellingMonitor(int captures) {
            this.captures = captures;
        }

        @Override
        public boolean isCanceled() {
            Path folder = ResourcesPlugin.getWorkspace()
                    .getRoot()
                    .getLocation()
                    .append(DemonstrationJob.PROJECT)
                    .append(Jobs.CAPTURES)
                    .toPath();
            String[] names = folder.toFile().list((parent, name) -> name.endsWith(".csv"));
            return names != null && names.length >= captures;
        }
    }

    private static void open() throws Exception {
        PlatformUI.getWorkbench().getService(IHandlerService.class).executeCommand(WorkbenchIds.OPEN_START_PAGE, null);
    }

    private static IProject demonstration() {
        return ResourcesPlugin.getWorkspace().getRoot().getProject(DemonstrationJob.PROJECT);
    }

    private static long captures() {
        return filesIn(Jobs.CAPTURES).stream()
                .filter(name -> name.endsWith(".csv"))
                .count();
    }

    private static List<String> filesIn(String folder) {
        try {
            IResource[] files =
                    demonstration().isOpen() ? demonstration().getFolder(folder).members() : new IResource[0];
            return Arrays.stream(files).map(IResource::getName).toList();
        } catch (CoreException e) {
            // The folder comes and goes while a test waits for it.
            return List.of();
        }
    }
}
