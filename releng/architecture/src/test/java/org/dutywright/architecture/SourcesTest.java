// SPDX-License-Identifier: EPL-2.0
package org.dutywright.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What holds for every committed text. */
final class SourcesTest {
    private static final String LICENCE_LINE = "// SPDX-License-Identifier: EPL-2.0";

    /** Folders that only one machine has. Before the slash stands nothing that could make it part of a longer path. */
    private static final Pattern MACHINE_PATH = Pattern.compile("(?<![\\w.~*$}/-])/(?:home|root|tmp|farm|work)/");

    /** A build takes its libraries from where Maven's own settings say, so no text needs the address of a registry. */
    private static final Pattern REGISTRY = Pattern.compile(
            "https?://(?!maven\\.apache\\.org/)[^\\s/\"]*(?:maven|repo1|npm|pypi|debian|sonatype|nexus|artifactory)");

    @Test
    void every_java_file_starts_with_its_licence() throws IOException {
        List<Path> unlicensed = filesEndingIn(".java")
                .filter(file -> !read(file).startsWith(LICENCE_LINE + "\n"))
                .toList();

        assertThat(unlicensed).isEmpty();
    }

    @Test
    void no_text_names_a_folder_of_one_machine_or_a_registry() throws IOException {
        List<String> named = Checkout.files().stream()
                .flatMap(file -> read(file)
                        .lines()
                        .filter(line -> MACHINE_PATH.matcher(line).find()
                                || REGISTRY.matcher(line).find())
                        .map(line -> Checkout.root().relativize(file) + ": " + line.strip()))
                .toList();

        assertThat(named).isEmpty();
    }

    @Test
    void the_start_scripts_can_be_executed() {
        assertThat(Set.of("releng/run", "releng/test", "releng/dutywright", ".ci/run"))
                .allSatisfy(
                        script -> assertThat(Checkout.root().resolve(script)).isExecutable());
    }

    private static Stream<Path> filesEndingIn(String ending) throws IOException {
        return Checkout.files().stream().filter(file -> file.toString().endsWith(ending));
    }

    /** Bytes that are no text become characters that match nothing. */
    private static String read(Path file) {
        try {
            return new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new AssertionError("cannot read " + file, e);
        }
    }
}
