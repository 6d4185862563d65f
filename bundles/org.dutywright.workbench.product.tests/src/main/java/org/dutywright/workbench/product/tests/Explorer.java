// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.product.tests;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import org.dutywright.workbench.tests.kit.Pump;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IResource;
import org.eclipse.jface.action.IContributionItem;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.navigator.CommonNavigator;
import org.eclipse.ui.views.markers.MarkerItem;

/** Hands in the trees of the platform: selecting, double clicks and the context menu. */
final class Explorer {
    private Explorer() {}

    /** Selects a resource in the Project Explorer. */
    static Tree select(IResource resource) throws PartInitException {
        CommonNavigator navigator = (CommonNavigator) JobDesk.page().showView(IPageLayout.ID_PROJECT_EXPLORER);
        TreeViewer viewer = navigator.getCommonViewer();
        Pump.until(resource.getName() + " is selected in the Project Explorer", () -> {
            viewer.setSelection(new StructuredSelection(resource), true);
            return resource.equals(viewer.getStructuredSelection().getFirstElement())
                    && viewer.getTree().getSelectionCount() == 1;
        });
        return viewer.getTree();
    }

    /** Clicks twice on the selected item of a tree. */
    static void openSelected(Tree tree) {
        Event event = new Event();
        event.item = tree.getSelection()[0];
        tree.notifyListeners(SWT.DefaultSelection, event);
    }

    /** Clicks twice on a marker that a view of the platform lists. */
    static void open(TreeViewer viewer, IMarker marker) {
        Pump.until("the marker is selected", () -> {
            item(viewer, marker).ifPresent(item -> viewer.setSelection(new StructuredSelection(item), true));
            return viewer.getStructuredSelection().getFirstElement() instanceof MarkerItem selected
                    && marker.equals(selected.getMarker())
                    && viewer.getTree().getSelectionCount() == 1;
        });
        openSelected(viewer.getTree());
    }

    // The tree fills its items when it paints them, so the view's content is searched and not its items.
    private static Optional<Object> item(TreeViewer viewer, IMarker marker) {
        ITreeContentProvider content = (ITreeContentProvider) viewer.getContentProvider();
        return Arrays.stream(content.getElements(viewer.getInput()))
                .flatMap(group -> Stream.concat(Stream.of(group), Arrays.stream(content.getChildren(group))))
                .filter(item -> item instanceof MarkerItem found && marker.equals(found.getMarker()))
                .findFirst();
    }

    /** Takes a command from the context menu of a tree. */
    static void takeFromMenu(Tree tree, String command) {
        Menu menu = tree.getMenu();
        menu.notifyListeners(SWT.Show, new Event());
        try {
            Pump.untilPresent("the menu has " + command, () -> item(menu, command))
                    .notifyListeners(SWT.Selection, new Event());
        } finally {
            menu.notifyListeners(SWT.Hide, new Event());
        }
    }

    private static Optional<MenuItem> item(Menu menu, String command) {
        return Arrays.stream(menu.getItems())
                .filter(item -> item.getData() instanceof IContributionItem contribution
                        && command.equals(contribution.getId()))
                .findFirst();
    }
}
