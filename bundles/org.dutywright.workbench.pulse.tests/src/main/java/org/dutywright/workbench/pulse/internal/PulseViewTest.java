// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.dutywright.simulation.DemoScenarios.Demo;
import org.dutywright.workbench.pulse.PulseIds;
import org.dutywright.workbench.session.CycleSelection;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.Widgets;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.core.resources.IFile;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.nebula.widgets.nattable.NatTable;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IViewPart;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The view follows the capture in the active editor and lists what was measured on it. */
@WindowTest
final class PulseViewTest {
    private static final Demo MISSING = Yard.demo("vehicle-05-missing-pulses");

    private Yard yard;
    private IViewPart view;

    @BeforeEach
    void openView() throws Exception {
        yard = Yard.make("view");
        view = yard.page().showView(PulseIds.VIEW);
    }

    @AfterEach
    void closeView() throws Exception {
        yard.page().hideView(view);
        yard.close();
    }

    @Test
    void without_a_capture_it_says_what_to_do() {
        assertThat(Widgets.named(PulseIds.MESSAGE, Label.class).getText()).isEqualTo(Messages.nothingOpen);
    }

    @Test
    void an_open_capture_is_measured_and_listed() throws Exception {
        yard.open(yard.simulate(MISSING));
        CycleGrid grid = measured();

        Table summary = Widgets.named(PulseIds.SUMMARY, Table.class);
        assertThat(summary.getColumnCount()).isEqualTo(3);
        assertThat(Arrays.stream(summary.getItems()).map(item -> item.getText(0)))
                .contains("Status", "Active level", "Cycles", "Events: missing-pulse", "Low level");
        assertThat(grid.count()).isGreaterThan(100);
        assertThat(grid.text(0, 0)).isEqualTo("0");
        assertThat(grid.text(3, 10)).endsWith("Hz");
    }

    @Test
    void a_chosen_cycle_becomes_the_selection_of_the_page() throws Exception {
        IFile file = yard.simulate(MISSING);
        yard.open(file);
        CycleGrid grid = measured();
        yard.page().activate(view);

        grid.choose(42);

        IStructuredSelection selection = (IStructuredSelection) yard.page().getSelection();
        CycleSelection cycle = (CycleSelection) selection.getFirstElement();
        assertThat(cycle.file()).isEqualTo(file);
        assertThat(cycle.channel()).isEqualTo("signal1");
        assertThat(cycle.cycle()).isEqualTo(42);
        assertThat(cycle.endSeconds()).isGreaterThan(cycle.startSeconds());
    }

    @Test
    void a_cycle_that_another_part_selects_is_shown() throws Exception {
        IFile file = yard.simulate(MISSING);
        IEditorPart editor = yard.open(file);
        CycleGrid grid = measured();
        yard.page().activate(editor);

        ((PulseView) view)
                .selected(editor, new StructuredSelection(new CycleSelection(file, "signal2", 77, 0.4, 0.405)));

        assertThat(Widgets.named(PulseIds.CHANNEL, Combo.class).getText()).isEqualTo("signal2");
        assertThat(grid.row()).contains(77L);
    }

    @Test
    void a_file_that_is_no_capture_fails_with_words_and_can_be_tried_again() throws Exception {
        IFile file = yard.simulate(MISSING);
        file.setContents(
                new ByteArrayInputStream("time (s),signal1 (V)\n0,1\n1,x\n2,1\n".getBytes(StandardCharsets.UTF_8)),
                true,
                false,
                null);
        yard.open(file);

        Label message = Widgets.named(PulseIds.MESSAGE, Label.class);
        Pump.until("the view tells of the failure", () -> message.getText().contains("line 3"));
        Widgets.press(Widgets.named(PulseIds.AGAIN, Button.class));
        Pump.until("the view tells of it again", () -> message.getText().contains("line 3"));
    }

    private static CycleGrid measured() {
        return Pump.untilPresent(
                "the cycles are listed",
                () -> Widgets.find(PulseIds.CYCLES, NatTable.class)
                        .filter(NatTable::isVisible)
                        .map(CycleGrid::of)
                        .filter(grid -> grid.count() > 0));
    }
}
