// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.tests;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import org.dutywright.workbench.capture.CaptureEditor;
import org.dutywright.workbench.capture.internal.NoticePage;
import org.dutywright.workbench.capture.internal.TracePlot;
import org.dutywright.workbench.tests.kit.Screens;
import org.dutywright.workbench.tests.kit.Theme;
import org.dutywright.workbench.tests.kit.Widgets;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pictures of traces for a person to look at, in both themes and two sizes. */
@WindowTest
final class CaptureScreensTest {
    private CaptureDesk desk;

    @BeforeEach
    void setUp() throws CoreException {
        desk = new CaptureDesk();
    }

    @AfterEach
    void cleanUp() throws CoreException {
        Theme.LIGHT.use();
        desk.close();
    }

    @ParameterizedTest
    @CsvSource({"LIGHT, 1280, 800", "DARK, 1280, 800", "LIGHT, 1920, 1080", "DARK, 1920, 1080"})
    void traces_look_as_they_should(Theme theme, int width, int height) throws Exception {
        assumeTrue(Screens.hasRoomFor(width, height), "the screen is smaller than " + width + " x " + height);
        CaptureEditor editor = desk.openWhole(desk.simulate("vehicle-05-missing-pulses"));
        theme.use();
        Shell shell = editor.getSite().getShell();

        TracePlot plot = CaptureDesk.awaitTraces(editor);
        Path whole = Screens.take(shell, width, height, "traces-whole-" + theme, plot::isUpToDate);
        plot.showView(plot.view().closeTo(1.0, 1.004));
        CaptureDesk.awaitTraces(editor);
        CaptureDesk.click(
                plot.plot(),
                plot.timeScale().widthPixels() / 2,
                plot.laneLayout().lowPixel(0));
        Path near = Screens.take(
                shell,
                width,
                height,
                "traces-near-" + theme,
                () -> plot.isUpToDate() && plot.mark().isPresent());
        desk.open(desk.write("broken.csv", "time (s),signal1 (V)\n0,1\n1,x\n2,1\n"));
        Text words = Widgets.inSight(NoticePage.WORDS, Text.class);
        Path broken = Screens.take(
                shell,
                width,
                height,
                "traces-broken-" + theme,
                () -> words.isVisible() && words.getText().contains("line 3"));

        // A window that failed to paint shows a handful of colours; text alone, smoothed, brings dozens.
        assertThat(whole)
                .satisfies(picture -> assertThat(Screens.colours(picture)).isGreaterThan(50));
        assertThat(Screens.colours(near)).isGreaterThan(50);
        assertThat(Screens.colours(broken)).isGreaterThan(50);
    }
}
