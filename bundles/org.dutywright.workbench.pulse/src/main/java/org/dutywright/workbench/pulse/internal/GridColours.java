// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import org.eclipse.nebula.widgets.nattable.NatTable;
import org.eclipse.nebula.widgets.nattable.config.CellConfigAttributes;
import org.eclipse.nebula.widgets.nattable.config.IConfigRegistry;
import org.eclipse.nebula.widgets.nattable.grid.GridRegion;
import org.eclipse.nebula.widgets.nattable.painter.cell.ICellPainter;
import org.eclipse.nebula.widgets.nattable.painter.cell.TextPainter;
import org.eclipse.nebula.widgets.nattable.painter.cell.decorator.PaddingDecorator;
import org.eclipse.nebula.widgets.nattable.style.CellStyleAttributes;
import org.eclipse.nebula.widgets.nattable.style.DisplayMode;
import org.eclipse.nebula.widgets.nattable.style.HorizontalAlignmentEnum;
import org.eclipse.nebula.widgets.nattable.style.SelectionStyleLabels;
import org.eclipse.nebula.widgets.nattable.style.Style;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Control;

/**
 * Colours of the table of cycles. The platform's theme knows no such table, so it takes the colours of a table that the
 * theme does know, and takes them again when that one has got others.
 */
final class GridColours {
    private static final double LINE_SHARE = 0.15;
    private static final double HEAD_SHARE = 0.08;
    private static final int PADDING = 6;

    private final NatTable table;
    private final Control model;
    private RGB background = new RGB(0, 0, 0);
    private RGB text = new RGB(0, 0, 0);

    private GridColours(NatTable table, Control model) {
        this.table = table;
        this.model = model;
    }

    static void keep(NatTable table, Control model) {
        GridColours colours = new GridColours(table, model);
        colours.take();
        model.addListener(SWT.Paint, event -> colours.update());
        table.addListener(SWT.Paint, event -> colours.update());
    }

    private void update() {
        boolean same = model.isDisposed()
                || background.equals(model.getBackground().getRGB())
                        && text.equals(model.getForeground().getRGB());
        if (!same) {
            table.getDisplay().asyncExec(() -> {
                if (!table.isDisposed() && !model.isDisposed()) {
                    take();
                    table.redraw();
                }
            });
        }
    }

    private void take() {
        background = model.getBackground().getRGB();
        text = model.getForeground().getRGB();
        Color chosen = table.getDisplay().getSystemColor(SWT.COLOR_LIST_SELECTION);
        Color chosenText = table.getDisplay().getSystemColor(SWT.COLOR_LIST_SELECTION_TEXT);
        IConfigRegistry registry = table.getConfigRegistry();
        ICellPainter painter = new PaddingDecorator(new TextPainter(false, true), 0, PADDING, 0, PADDING);
        registry.registerConfigAttribute(CellConfigAttributes.CELL_PAINTER, painter);
        registry.registerConfigAttribute(CellConfigAttributes.GRID_LINE_COLOR, mixed(LINE_SHARE));
        Style body = style(new Color(background), new Color(text), HorizontalAlignmentEnum.RIGHT);
        registry.registerConfigAttribute(CellConfigAttributes.CELL_STYLE, body, DisplayMode.NORMAL);
        registry.registerConfigAttribute(CellConfigAttributes.CELL_STYLE, body, DisplayMode.NORMAL, GridRegion.BODY);
        Style head = style(mixed(HEAD_SHARE), new Color(text), HorizontalAlignmentEnum.RIGHT);
        for (DisplayMode mode : new DisplayMode[] {DisplayMode.NORMAL, DisplayMode.SELECT}) {
            // The table's own painter raises the heads by edges of fixed colours, glaring on a dark ground.
            registry.registerConfigAttribute(
                    CellConfigAttributes.CELL_PAINTER, painter, mode, GridRegion.COLUMN_HEADER);
            registry.registerConfigAttribute(CellConfigAttributes.CELL_STYLE, head, mode, GridRegion.COLUMN_HEADER);
            registry.registerConfigAttribute(
                    CellConfigAttributes.CELL_STYLE, head, mode, SelectionStyleLabels.COLUMN_FULLY_SELECTED_STYLE);
        }
        Style selected = style(chosen, chosenText, HorizontalAlignmentEnum.RIGHT);
        registry.registerConfigAttribute(CellConfigAttributes.CELL_STYLE, selected, DisplayMode.SELECT);
        registry.registerConfigAttribute(
                CellConfigAttributes.CELL_STYLE,
                selected,
                DisplayMode.SELECT,
                SelectionStyleLabels.SELECTION_ANCHOR_STYLE);
        registry.registerConfigAttribute(
                CellConfigAttributes.CELL_STYLE,
                selected,
                DisplayMode.NORMAL,
                SelectionStyleLabels.SELECTION_ANCHOR_STYLE);
        table.setBackground(new Color(background));
    }

    private static Style style(Color ground, Color ink, HorizontalAlignmentEnum alignment) {
        Style style = new Style();
        style.setAttributeValue(CellStyleAttributes.BACKGROUND_COLOR, ground);
        style.setAttributeValue(CellStyleAttributes.FOREGROUND_COLOR, ink);
        style.setAttributeValue(CellStyleAttributes.HORIZONTAL_ALIGNMENT, alignment);
        return style;
    }

    private Color mixed(double share) {
        return new Color(
                mixed(background.red, text.red, share),
                mixed(background.green, text.green, share),
                mixed(background.blue, text.blue, share));
    }

    private static int mixed(int ground, int ink, double share) {
        return (int) Math.round(ground + (ink - ground) * share);
    }
}
