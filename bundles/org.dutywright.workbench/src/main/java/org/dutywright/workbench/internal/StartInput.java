// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.internal;

import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.ui.IEditorInput;
import org.eclipse.ui.IPersistableElement;

/** The start page has no file; all its inputs are equal, so that it opens once. */
record StartInput() implements IEditorInput {
    @Override
    public boolean exists() {
        return false;
    }

    @Override
    public ImageDescriptor getImageDescriptor() {
        return ImageDescriptor.getMissingImageDescriptor();
    }

    @Override
    public String getName() {
        return "Start Here";
    }

    /** None: the page comes back by itself where the workspace is empty, and else when it is asked for. */
    @Override
    public IPersistableElement getPersistable() {
        return null;
    }

    @Override
    public String getToolTipText() {
        return getName();
    }

    @Override
    public <T> T getAdapter(Class<T> adapter) {
        return null;
    }
}
