// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests.kit;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import org.dutywright.workbench.WidgetIds;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;

/** Finds widgets by their {@linkplain WidgetIds names} and works them as a user would. */
public final class Widgets {
    private Widgets() {}

    /** The control of that name in any shell, waited for. */
    public static <C extends Control> C named(String id, Class<C> type) {
        return Pump.untilPresent("there is a control named " + id, () -> find(id, type));
    }

    /** The control of that name that is in sight, waited for: each editor of a kind has one of the name. */
    public static <C extends Control> C inSight(String id, Class<C> type) {
        return Pump.untilPresent(
                "a control named " + id + " is in sight",
                () -> all(id, type).filter(Control::isVisible).findFirst());
    }

    /** The control of that name, where there is one now. */
    public static <C extends Control> Optional<C> find(String id, Class<C> type) {
        return all(id, type).findFirst();
    }

    private static <C extends Control> Stream<C> all(String id, Class<C> type) {
        return Arrays.stream(Display.getCurrent().getShells())
                .flatMap(Widgets::withChildren)
                .filter(control -> WidgetIds.of(control).filter(id::equals).isPresent())
                .filter(type::isInstance)
                .map(type::cast);
    }

    /** A control and all below it. */
    public static Stream<Control> withChildren(Control control) {
        Stream<Control> below = control instanceof Composite composite
                ? Arrays.stream(composite.getChildren()).flatMap(Widgets::withChildren)
                : Stream.empty();
        return Stream.concat(Stream.of(control), below);
    }

    /** Presses a button once it can be pressed. */
    public static void press(Button button) {
        Pump.until(
                "the button " + button.getText() + " can be pressed", () -> button.isVisible() && button.isEnabled());
        button.notifyListeners(SWT.Selection, new Event());
    }
}
