// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests;

import static org.assertj.core.api.Assertions.assertThat;

import org.dutywright.workbench.WorkbenchIds;
import org.dutywright.workbench.internal.Jobs;
import org.dutywright.workbench.internal.NewJobWizard;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.Widgets;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.wizard.WizardDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The wizard makes a job of the name that was typed. */
@WindowTest
final class NewJobWizardTest {
    private static final String NAME = "Complaint 12";

    private final NewJobWizard wizard = new NewJobWizard();
    private final WizardDialog dialog = open(wizard);

    @AfterEach
    void cleanUp() throws CoreException {
        dialog.close();
        project().delete(true, true, null);
    }

    @Test
    void a_name_makes_a_job_with_a_folder_for_captures() throws CoreException {
        name().setText(NAME);
        Pump.until("the wizard is content", wizard::canFinish);

        assertThat(wizard.performFinish()).isTrue();

        assertThat(project().hasNature(WorkbenchIds.JOB_NATURE)).isTrue();
        assertThat(project().getFolder(Jobs.CAPTURES).exists()).isTrue();
    }

    @Test
    void without_a_name_there_is_nothing_to_finish() {
        name().setText("");

        assertThat(wizard.canFinish()).isFalse();
    }

    private static WizardDialog open(NewJobWizard wizard) {
        wizard.init(PlatformUI.getWorkbench(), StructuredSelection.EMPTY);
        WizardDialog dialog = new WizardDialog(
                PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell(), wizard);
        dialog.setBlockOnOpen(false);
        dialog.open();
        Pump.settle();
        return dialog;
    }

    /** The page is the platform's and gives its fields no names; the one for the name is the first. */
    private Text name() {
        return Widgets.withChildren(dialog.getShell())
                .filter(control -> control instanceof Text && (control.getStyle() & SWT.READ_ONLY) == 0)
                .map(Text.class::cast)
                .findFirst()
                .orElseThrow();
    }

    private static IProject project() {
        return ResourcesPlugin.getWorkspace().getRoot().getProject(NAME);
    }
}
