// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.io.IOException;
import java.util.Optional;
import org.dutywright.sensor.Catalogue;
import org.dutywright.workbench.pulse.PulseIds;
import org.dutywright.workbench.session.SensorChoice;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.handlers.HandlerUtil;

/** Asks which sensor a capture is compared with, and starts the comparison. */
public final class CheckHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        IWorkbenchWindow window = HandlerUtil.getActiveWorkbenchWindowChecked(event);
        IWorkbenchPage page = window.getActivePage();
        Optional<IFile> file = CaptureFiles.of(HandlerUtil.getCurrentSelection(event), page);
        if (file.isEmpty()) {
            MessageDialog.openInformation(window.getShell(), Messages.checkTab, Messages.noCapture);
        } else {
            Optional<CheckWish> wish = wish(event, window.getShell(), file.get());
            if (wish.isPresent()) {
                start(page, file.get(), wish.get());
            }
        }
        // Handlers answer null by the contract of the command framework.
        return null;
    }

    private static Optional<CheckWish> wish(ExecutionEvent event, Shell shell, IFile file) throws ExecutionException {
        Catalogue catalogue = catalogue(file);
        String id = event.getParameter(PulseIds.CHECK_SENSOR);
        if (id != null) {
            return Optional.of(CheckWish.of(catalogue
                    .find(id)
                    .orElseThrow(() -> new ExecutionException("no sensor " + id + "; " + catalogue.hint(id)))
                    .sensor()));
        }
        CheckDialog dialog = new CheckDialog(shell, file.getName(), catalogue, SensorChoice.of(file));
        return dialog.open() == Window.OK ? dialog.wish() : Optional.empty();
    }

    private static Catalogue catalogue(IFile file) throws ExecutionException {
        try {
            return SensorChoice.catalogue(file.getProject());
        } catch (IOException | CoreException e) {
            throw new ExecutionException(Messages.catalogueFailed, e);
        }
    }

    private static void start(IWorkbenchPage page, IFile file, CheckWish wish) throws ExecutionException {
        try {
            page.showView(PulseIds.VIEW, null, IWorkbenchPage.VIEW_VISIBLE);
        } catch (PartInitException e) {
            throw new ExecutionException(e.getMessage(), e);
        }
        CheckReports.forget(file);
        new CheckJob(file, wish).schedule();
    }
}
