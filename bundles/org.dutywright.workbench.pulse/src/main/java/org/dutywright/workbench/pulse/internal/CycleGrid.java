// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.dutywright.workbench.WidgetIds;
import org.dutywright.workbench.pulse.PulseIds;
import org.eclipse.nebula.widgets.nattable.NatTable;
import org.eclipse.nebula.widgets.nattable.config.ConfigRegistry;
import org.eclipse.nebula.widgets.nattable.config.DefaultNatTableStyleConfiguration;
import org.eclipse.nebula.widgets.nattable.coordinate.PositionCoordinate;
import org.eclipse.nebula.widgets.nattable.data.IDataProvider;
import org.eclipse.nebula.widgets.nattable.grid.GridRegion;
import org.eclipse.nebula.widgets.nattable.grid.layer.ColumnHeaderLayer;
import org.eclipse.nebula.widgets.nattable.layer.CompositeLayer;
import org.eclipse.nebula.widgets.nattable.layer.DataLayer;
import org.eclipse.nebula.widgets.nattable.selection.SelectionLayer;
import org.eclipse.nebula.widgets.nattable.selection.command.SelectRowsCommand;
import org.eclipse.nebula.widgets.nattable.selection.config.RowOnlySelectionBindings;
import org.eclipse.nebula.widgets.nattable.selection.config.RowOnlySelectionConfiguration;
import org.eclipse.nebula.widgets.nattable.selection.event.ISelectionEvent;
import org.eclipse.nebula.widgets.nattable.viewport.ViewportLayer;
import org.eclipse.nebula.widgets.nattable.viewport.command.ShowRowInViewportCommand;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;

/** The table of all cycles of a channel. Only rows in sight are read, so that a million of them open at once. */
public final class CycleGrid {
    private static final List<CycleColumn> COLUMNS = List.of(CycleColumn.values());
    private static final int CELL_PADDING = 14;
    private static final int ROW_PADDING = 6;

    private final NatTable table;
    private final SelectionLayer selection;
    private final LongConsumer chosen;
    private CycleRows rows = CycleRows.none();
    private boolean silent;

    /**
     * Makes the table.
     *
     * @param model a control that the platform's theme colours; the table takes its colours
     * @param chosen hears of the row that the user chooses
     */
    CycleGrid(Composite parent, Control model, LongConsumer chosen) {
        this.chosen = chosen;
        DataLayer body = new DataLayer(new Cells());
        DataLayer head = new DataLayer(new Headings());
        selection = new SelectionLayer(body, false);
        selection.addConfiguration(new RowOnlySelectionConfiguration());
        ViewportLayer viewport = new ViewportLayer(selection);
        viewport.setRegionName(GridRegion.BODY);
        ColumnHeaderLayer heading = new ColumnHeaderLayer(head, viewport, selection);
        CompositeLayer whole = new CompositeLayer(1, 2);
        whole.setChildLayer(GridRegion.COLUMN_HEADER, heading, 0, 0);
        whole.setChildLayer(GridRegion.BODY, viewport, 0, 1);
        table = WidgetIds.name(new NatTable(parent, whole, false), PulseIds.CYCLES);
        table.setConfigRegistry(new ConfigRegistry());
        table.addConfiguration(new DefaultNatTableStyleConfiguration());
        table.addConfiguration(new RowOnlySelectionBindings());
        table.configure();
        size(body, head);
        GridColours.keep(table, model);
        selection.addLayerListener(event -> {
            if (event instanceof ISelectionEvent && !silent) {
                row().ifPresent(chosen::accept);
            }
        });
        table.setData(CycleGrid.class.getName(), this);
    }

    /** The grid of a table, for tests. */
    public static CycleGrid of(NatTable table) {
        return (CycleGrid) table.getData(CycleGrid.class.getName());
    }

    private void size(DataLayer body, DataLayer head) {
        GC gc = new GC(table);
        try {
            for (CycleColumn column : COLUMNS) {
                Point widest = gc.textExtent(column.widest());
                Point label = gc.textExtent(column.label());
                int width = Math.max(widest.x, label.x) + CELL_PADDING;
                body.setColumnWidthByPosition(column.ordinal(), width);
            }
            int height = gc.getFontMetrics().getHeight() + ROW_PADDING;
            body.setDefaultRowHeight(height);
            head.setDefaultRowHeight(height);
        } finally {
            gc.dispose();
        }
    }

    Control control() {
        return table;
    }

    CycleRows rows() {
        return rows;
    }

    /** Shows other rows from the first on, none of them chosen. */
    void show(CycleRows next) {
        silent = true;
        try {
            rows = next;
            selection.clear(false);
            table.refresh();
            if (rows.count() > 0) {
                table.doCommand(new ShowRowInViewportCommand(0));
            }
        } finally {
            silent = false;
        }
    }

    /** Chooses a row and brings it into sight, without telling that it was chosen. */
    void reveal(long row) {
        silent = true;
        try {
            select(row);
        } finally {
            silent = false;
        }
    }

    /** Chooses a row as the user does. */
    public void choose(long row) {
        select(row);
    }

    private void select(long row) {
        int position = Math.toIntExact(row);
        selection.doCommand(new SelectRowsCommand(selection, 0, position, false, false));
        table.doCommand(new ShowRowInViewportCommand(position));
    }

    /** The chosen row. */
    public Optional<Long> row() {
        if (selection.getSelectedRowCount() == 0) {
            return Optional.empty();
        }
        PositionCoordinate anchor = selection.getSelectionAnchor();
        return anchor.getRowPosition() < 0 ? Optional.empty() : Optional.of((long) anchor.getRowPosition());
    }

    /** Number of rows. */
    public int count() {
        return rows.count();
    }

    /** Text of a cell. */
    public String text(int column, long row) {
        return rows.text(COLUMNS.get(column), row);
    }

    private abstract static class ReadOnly implements IDataProvider {
        @Override
        public int getColumnCount() {
            return COLUMNS.size();
        }

        @Override
        public void setDataValue(int column, int row, Object value) {
            throw new UnsupportedOperationException("what was measured is not edited");
        }
    }

    private final class Cells extends ReadOnly {
        @Override
        public Object getDataValue(int column, int row) {
            return rows.text(COLUMNS.get(column), row);
        }

        @Override
        public int getRowCount() {
            return rows.count();
        }
    }

    private static final class Headings extends ReadOnly {
        @Override
        public Object getDataValue(int column, int row) {
            return COLUMNS.get(column).label();
        }

        @Override
        public int getRowCount() {
            return 1;
        }
    }
}
