// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import org.eclipse.core.runtime.ListenerList;
import org.eclipse.core.runtime.SafeRunner;
import org.eclipse.jface.viewers.ISelection;
import org.eclipse.jface.viewers.ISelectionChangedListener;
import org.eclipse.jface.viewers.ISelectionProvider;
import org.eclipse.jface.viewers.SelectionChangedEvent;
import org.eclipse.jface.viewers.StructuredSelection;

/** Tells the platform what is chosen in the traces. */
public final class Selections implements ISelectionProvider {
    private final ListenerList<ISelectionChangedListener> listeners = new ListenerList<>();
    private ISelection selection = StructuredSelection.EMPTY;

    @Override
    public void addSelectionChangedListener(ISelectionChangedListener listener) {
        listeners.add(listener);
    }

    @Override
    public void removeSelectionChangedListener(ISelectionChangedListener listener) {
        listeners.remove(listener);
    }

    @Override
    public ISelection getSelection() {
        return selection;
    }

    @Override
    public void setSelection(ISelection next) {
        selection = next;
        SelectionChangedEvent event = new SelectionChangedEvent(this, next);
        listeners.forEach(listener -> SafeRunner.run(() -> listener.selectionChanged(event)));
    }
}
