// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.core.resources.IFile;
import org.eclipse.ui.IPartListener2;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchPartReference;

/** Tells which capture the active editor of a page shows, now and whenever another one comes to the front. */
final class ActiveCapture implements IPartListener2 {
    private final IWorkbenchPage page;
    private final Consumer<Optional<IFile>> follower;

    private ActiveCapture(IWorkbenchPage page, Consumer<Optional<IFile>> follower) {
        this.page = page;
        this.follower = follower;
    }

    static ActiveCapture follow(IWorkbenchPage page, Consumer<Optional<IFile>> follower) {
        ActiveCapture active = new ActiveCapture(page, follower);
        page.addPartListener(active);
        active.tell();
        return active;
    }

    void stop() {
        page.removePartListener(this);
    }

    private void tell() {
        follower.accept(CaptureFiles.of(page.getActiveEditor()));
    }

    @Override
    public void partActivated(IWorkbenchPartReference part) {
        tell();
    }

    @Override
    public void partBroughtToTop(IWorkbenchPartReference part) {
        tell();
    }

    @Override
    public void partClosed(IWorkbenchPartReference part) {
        tell();
    }

    @Override
    public void partInputChanged(IWorkbenchPartReference part) {
        tell();
    }
}
