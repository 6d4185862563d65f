// SPDX-License-Identifier: EPL-2.0
package org.dutywright.archives;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The target definition cannot take its versions from the root pom, so both are held against each other and the product. */
final class VersionsTest {
    private static final String PLATFORM = "org.eclipse.platform:";

    @Test
    void what_both_name_has_one_version() {
        Map<String, String> managed = Poms.managed();
        Map<String, String> target = Poms.target();
        Map<String, String> both = target.entrySet().stream()
                .filter(entry -> managed.containsKey(entry.getKey()))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));

        assertThat(both)
                .isNotEmpty()
                .allSatisfy(
                        (artifact, version) -> assertThat(version).as(artifact).isEqualTo(managed.get(artifact)));
    }

    @Test
    void the_test_runner_of_the_window_tests_is_that_of_the_others() {
        String version = Poms.managed().get("org.junit:junit-bom");

        Map<String, String> runner = Poms.target();
        runner.keySet().removeIf(artifact -> !artifact.startsWith("org.junit.jupiter:"));
        assertThat(runner)
                .isNotEmpty()
                .allSatisfy((artifact, found) -> assertThat(found).as(artifact).isEqualTo(version));
    }

    @Test
    void no_plugin_is_in_the_product_in_two_versions() throws IOException {
        Map<String, Long> counts = plugins().stream()
                .map(Plugin::name)
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));

        assertThat(counts)
                .allSatisfy((name, count) -> assertThat(count).as(name).isOne());
    }

    @Test
    void the_parts_of_the_platform_have_the_versions_of_the_target_definition() throws IOException {
        Map<String, Plugin> plugins = byName();
        Map<String, String> named = Poms.target().entrySet().stream()
                .filter(entry -> entry.getKey().startsWith(PLATFORM))
                .map(entry -> Map.entry(entry.getKey().substring(PLATFORM.length()), entry.getValue()))
                .filter(entry -> plugins.containsKey(entry.getKey()))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));

        assertThat(named)
                .hasSizeGreaterThan(10)
                .allSatisfy((name, version) -> assertThat(plugins.get(name))
                        .matches(plugin -> plugin.hasVersion(version), "has version " + version));
    }

    @Test
    void the_libraries_of_the_core_have_the_versions_of_the_root_pom() throws IOException {
        Map<String, Plugin> plugins = byName();
        Map<String, String> managed = Poms.managed();
        // A library's name as a plug-in is its own choice, so it is written down here.
        Map<String, String> names = Map.ofEntries(
                Map.entry("at.yawk.lz4:lz4-java", "lz4-java"),
                Map.entry("ch.randelshofer:fastdoubleparser", "ch.randelshofer.fastdoubleparser"),
                Map.entry("com.fasterxml.jackson.core:jackson-core", "com.fasterxml.jackson.core.jackson-core"),
                Map.entry("com.google.flatbuffers:flatbuffers-java", "com.google.flatbuffers.java"),
                Map.entry("com.ning:compress-lzf", "com.ning.compress-lzf"),
                Map.entry("de.siegmar:fastcsv", "de.siegmar.fastcsv"),
                Map.entry("info.picocli:picocli", "picocli"),
                Map.entry("io.jhdf:jhdf", "io.jhdf"),
                Map.entry("org.apache.arrow:arrow-format", "org.apache.arrow.format"),
                Map.entry("org.apache.commons:commons-lang3", "org.apache.commons.lang3"),
                Map.entry("org.apache.commons:commons-math3", "org.apache.commons.math3"),
                Map.entry("org.slf4j:slf4j-api", "slf4j.api"),
                Map.entry("org.snakeyaml:snakeyaml-engine", "org.snakeyaml.engine"),
                Map.entry("us.hebi.matlab.mat:mfl-core", "us.hebi.matlab.mat.mfl"));

        assertThat(names).allSatisfy((artifact, name) -> {
            assertThat(managed).containsKey(artifact);
            assertThat(plugins).containsKey(name);
            assertThat(plugins.get(name))
                    .matches(
                            plugin -> plugin.hasVersion(managed.get(artifact)), "has version " + managed.get(artifact));
        });
    }

    @Test
    void nothing_that_only_tests_need_is_in_the_product() throws IOException {
        assertThat(byName().keySet())
                .noneMatch(name -> name.startsWith("junit-") || name.startsWith("assertj") || name.endsWith(".tests"));
    }

    private static List<Plugin> plugins() throws IOException {
        return Checkout.plugins().stream().map(Plugin::of).toList();
    }

    private static Map<String, Plugin> byName() throws IOException {
        return plugins().stream().collect(Collectors.toMap(Plugin::name, Function.identity()));
    }
}
