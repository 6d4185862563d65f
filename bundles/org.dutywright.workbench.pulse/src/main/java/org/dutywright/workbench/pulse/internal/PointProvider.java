// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import org.eclipse.core.commands.common.EventManager;
import org.eclipse.jface.viewers.ISelection;
import org.eclipse.jface.viewers.ISelectionChangedListener;
import org.eclipse.jface.viewers.ISelectionProvider;
import org.eclipse.jface.viewers.SelectionChangedEvent;
import org.eclipse.jface.viewers.StructuredSelection;

/** Tells the platform which cycle is chosen. */
final class PointProvider extends EventManager implements ISelectionProvider {
    private ISelection selection = StructuredSelection.EMPTY;

    @Override
    public void addSelectionChangedListener(ISelectionChangedListener listener) {
        addListenerObject(listener);
    }

    @Override
    public void removeSelectionChangedListener(ISelectionChangedListener listener) {
        removeListenerObject(listener);
    }

    @Override
    public ISelection getSelection() {
        return selection;
    }

    @Override
    public void setSelection(ISelection next) {
        selection = next;
        for (Object listener : getListeners()) {
            ((ISelectionChangedListener) listener).selectionChanged(new SelectionChangedEvent(this, next));
        }
    }
}
