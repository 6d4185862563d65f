// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.util.Optional;
import org.dutywright.workbench.CaptureEndings;
import org.dutywright.workbench.WorkbenchIds;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.viewers.ISelection;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;

/** Which capture the user means. */
final class CaptureFiles {
    /** The editor that shows captures. */
    static final String EDITOR = "org.dutywright.workbench.capture.editor";

    private CaptureFiles() {}

    /** The capture that an editor shows: any file in the editor for captures, and a recording of a job in any other. */
    static Optional<IFile> of(IEditorPart editor) {
        if (editor == null) {
            return Optional.empty();
        }
        Optional<IFile> file = Optional.ofNullable(editor.getEditorInput().getAdapter(IFile.class));
        boolean sure = EDITOR.equals(editor.getSite().getId());
        return file.filter(it -> sure || isOfJob(it));
    }

    private static boolean isOfJob(IFile file) {
        try {
            return CaptureEndings.has(file) && file.getProject().hasNature(WorkbenchIds.JOB_NATURE);
        } catch (CoreException e) {
            // A project that is closed or gone is no job.
            return false;
        }
    }

    /** The one capture that is selected, else the one in the active editor. */
    static Optional<IFile> of(ISelection selection, IWorkbenchPage page) {
        return selected(selection).or(() -> of(page.getActiveEditor()));
    }

    private static Optional<IFile> selected(ISelection selection) {
        if (selection instanceof IStructuredSelection several && several.size() == 1) {
            return Optional.ofNullable(Adapters.adapt(several.getFirstElement(), IFile.class))
                    .filter(CaptureEndings::has);
        }
        return Optional.empty();
    }
}
