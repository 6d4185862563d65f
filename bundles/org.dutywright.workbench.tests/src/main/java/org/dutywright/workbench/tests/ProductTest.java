// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.dutywright.workbench.WorkbenchIds;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.Theme;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.core.runtime.IProduct;
import org.eclipse.core.runtime.Platform;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveDescriptor;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.activities.WorkbenchActivityHelper;
import org.eclipse.ui.internal.WorkbenchPage;
import org.eclipse.ui.internal.registry.IActionSetDescriptor;
import org.eclipse.ui.progress.IProgressConstants;
import org.junit.jupiter.api.Test;

/** The product shows its own face. */
@WindowTest
final class ProductTest {
    private final IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();

    @Test
    void the_product_is_named_dutywright_and_has_a_text_about_it() {
        IProduct product = Platform.getProduct();

        assertThat(product.getId()).isEqualTo(WorkbenchIds.PRODUCT);
        assertThat(product.getName()).isEqualTo("Dutywright");
        assertThat(product.getProperty("aboutText")).startsWith("Dutywright").contains("Eclipse Public License 2.0");
        assertThat(product.getProperty("cssTheme")).isEqualTo(Theme.LIGHT.id());
    }

    @Test
    void every_picture_that_the_product_names_is_in_its_bundle() {
        IProduct product = Platform.getProduct();
        List<String> pictures =
                List.of((product.getProperty("windowImages") + "," + product.getProperty("aboutImage") + ",splash.png")
                        .split(",", -1));

        assertThat(pictures)
                .allSatisfy(picture -> assertThat(product.getDefiningBundle().getEntry(picture))
                        .as(picture)
                        .isNotNull());
    }

    @Test
    void the_window_carries_the_name_and_the_icon() {
        assertThat(window.getShell().getText()).endsWith("Dutywright");
        assertThat(window.getShell().getImages()).hasSize(7);
    }

    @Test
    void the_measuring_perspective_opens_with_the_explorer_and_the_views_below() {
        IWorkbenchPage page = window.getActivePage();

        assertThat(page.getPerspective().getId()).isEqualTo(WorkbenchIds.PERSPECTIVE);
        assertThat(Arrays.stream(page.getViewReferences()).map(view -> view.getId()))
                .contains(
                        IPageLayout.ID_PROJECT_EXPLORER,
                        IPageLayout.ID_PROBLEM_VIEW,
                        IPageLayout.ID_PROP_SHEET,
                        IProgressConstants.PROGRESS_VIEW_ID);
    }

    @Test
    void no_other_perspective_is_offered() {
        assertThat(Arrays.stream(PlatformUI.getWorkbench()
                                .getPerspectiveRegistry()
                                .getPerspectives())
                        .filter(perspective -> !WorkbenchActivityHelper.filterItem(perspective))
                        .map(IPerspectiveDescriptor::getId))
                .containsExactly(WorkbenchIds.PERSPECTIVE);
    }

    @Test
    void tools_for_writing_programs_are_out_of_the_way() {
        Pump.until(
                "the perspective is tidied",
                () -> Arrays.stream(shownActionSets())
                        .noneMatch(id -> id.contains("annotationNavigation") || id.contains("convertLineDelimiters")));

        assertThat(shownActionSets()).contains("org.eclipse.search.searchActionSet");
    }

    private String[] shownActionSets() {
        return Arrays.stream(((WorkbenchPage) window.getActivePage()).getActionSets())
                .map(IActionSetDescriptor::getId)
                .toArray(String[]::new);
    }

    @Test
    void both_themes_are_there_and_can_be_put_on() {
        Theme.DARK.use();
        int dark = window.getShell().getBackground().getRed();
        Theme.LIGHT.use();
        int light = window.getShell().getBackground().getRed();

        assertThat(dark).isLessThan(light);
    }
}
