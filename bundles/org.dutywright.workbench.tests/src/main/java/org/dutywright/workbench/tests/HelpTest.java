// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.dutywright.workbench.internal.HelpPages;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.help.HelpSystem;
import org.eclipse.ui.internal.help.WorkbenchHelpSystem;
import org.junit.jupiter.api.Test;

/** The help is plain pages on disk, and every way into it and between them leads somewhere. */
@WindowTest
final class HelpTest {
    private static final Pattern LINK = Pattern.compile("href=\"([^\"#:]+)\"");

    @Test
    void the_index_is_a_file_that_a_browser_can_open() throws IOException {
        assertThat(index()).isRegularFile();
        assertThat(Files.readString(index())).contains("Dutywright help");
    }

    @Test
    void every_link_of_every_page_leads_to_a_page() throws IOException {
        try (Stream<Path> files = Files.list(index().getParent())) {
            List<Path> pages =
                    files.filter(file -> file.toString().endsWith(".html")).toList();
            assertThat(pages)
                    .hasSizeGreaterThan(2)
                    .allSatisfy(page -> assertThat(links(page))
                            .isNotEmpty()
                            .allSatisfy(link ->
                                    assertThat(page.resolveSibling(link)).isRegularFile()));
        }
    }

    @Test
    void every_page_is_reached_from_the_index() throws IOException {
        try (Stream<Path> files = Files.list(index().getParent())) {
            assertThat(files.map(file -> file.getFileName().toString())
                            .filter(name -> name.endsWith(".html") && !name.equals("index.html")))
                    .isSubsetOf(links(index()));
        }
    }

    @Test
    void the_key_for_help_leads_from_the_start_page_to_its_page() throws IOException {
        String page = HelpPages.pageOf(HelpSystem.getContext("org.dutywright.workbench.start"));

        assertThat(page).isEqualTo("help/start.html");
        assertThat(HelpPages.file(page)).isPresent();
    }

    @Test
    void a_page_that_is_not_there_is_absent() throws IOException {
        assertThat(HelpPages.file("help/nowhere.html")).isEmpty();
    }

    @Test
    void the_keys_for_help_are_ours_and_not_those_of_the_help_view() {
        Pump.until(
                "the workbench has started our help",
                () -> WorkbenchHelpSystem.getInstance().getDesiredHelpSystemId().equals(HelpPages.ID));

        assertThat(WorkbenchHelpSystem.getInstance().hasHelpUI()).isTrue();
    }

    private static Path index() throws IOException {
        return Path.of(HelpPages.file("help/index.html").orElseThrow());
    }

    private static List<String> links(Path page) throws IOException {
        return LINK.matcher(Files.readString(page))
                .results()
                .map((MatchResult result) -> result.group(1))
                .toList();
    }
}
