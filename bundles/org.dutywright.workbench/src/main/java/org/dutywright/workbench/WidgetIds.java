// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench;

import java.util.Optional;
import org.eclipse.swt.widgets.Widget;

/** Names for widgets that stay when labels are reworded or translated; tests find widgets by them. */
public final class WidgetIds {
    private static final String KEY = "org.dutywright.workbench.widget";

    private WidgetIds() {}

    /** Names a widget and returns it. */
    public static <W extends Widget> W name(W widget, String id) {
        widget.setData(KEY, id);
        return widget;
    }

    /** The name of a widget, empty where it has none. */
    public static Optional<String> of(Widget widget) {
        return Optional.ofNullable((String) widget.getData(KEY));
    }
}
