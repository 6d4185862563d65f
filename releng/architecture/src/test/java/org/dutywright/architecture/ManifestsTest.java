// SPDX-License-Identifier: EPL-2.0
package org.dutywright.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import aQute.bnd.header.OSGiHeader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.jar.Attributes;
import java.util.jar.Manifest;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The manifests that were built say the same as the classes: plain bundles of their own name for Java 21. */
final class ManifestsTest {
    static Stream<String> bundles() throws IOException {
        return Checkout.coreBundles().stream();
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void the_symbolic_name_is_the_name_of_the_folder(String bundle) throws IOException {
        assertThat(namesIn(bundle, "Bundle-SymbolicName")).containsExactly(bundle);
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void the_execution_environment_is_java_21(String bundle) throws IOException {
        assertThat(header(bundle, "Require-Capability"))
                .hasValueSatisfying(requirement -> assertThat(requirement).contains("(&(osgi.ee=JavaSE)(version=21))"));
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void no_package_of_eclipse_or_osgi_is_imported(String bundle) throws IOException {
        assertThat(namesIn(bundle, "Import-Package"))
                .noneMatch(name -> BundleTable.isWithin(name, "org.eclipse") || BundleTable.isWithin(name, "org.osgi"));
        assertThat(header(bundle, "Require-Bundle")).isEmpty();
        assertThat(header(bundle, "DynamicImport-Package")).isEmpty();
        assertThat(header(bundle, "Bundle-Activator")).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void no_internal_package_is_exported_and_no_other_is_kept_back(String bundle) throws IOException {
        Set<String> exported = namesIn(bundle, "Export-Package");
        Set<String> open = packagesOf(bundle).filter(name -> !isInternal(name)).collect(Collectors.toSet());

        assertThat(exported).isEqualTo(open);
    }

    @Test
    void no_package_is_split_between_bundles() throws IOException {
        Map<String, String> owners = new HashMap<>();
        for (String bundle : Checkout.coreBundles()) {
            for (String name : packagesOf(bundle).toList()) {
                assertThat(owners.put(name, bundle))
                        .as("the other bundle with package %s of %s", name, bundle)
                        .isNull();
            }
        }
        assertThat(owners).isNotEmpty();
    }

    private static boolean isInternal(String packageName) {
        return List.of(packageName.split("\\.", -1)).contains("internal");
    }

    private static Stream<String> packagesOf(String bundle) throws IOException {
        Path classes = Checkout.classesOf(bundle);
        try (Stream<Path> files = Files.walk(classes)) {
            return files
                    .filter(file -> file.toString().endsWith(".class"))
                    .map(file -> classes.relativize(file.getParent()).toString())
                    .map(folder -> folder.replace('/', '.').replace('\\', '.'))
                    .distinct()
                    .toList()
                    .stream();
        }
    }

    private static Set<String> namesIn(String bundle, String name) throws IOException {
        return header(bundle, name)
                .map(text -> OSGiHeader.parseHeader(text).keySet())
                .orElse(Set.of());
    }

    private static Optional<String> header(String bundle, String name) throws IOException {
        try (InputStream in = Files.newInputStream(
                Checkout.classesOf(bundle).resolve("META-INF").resolve("MANIFEST.MF"))) {
            Attributes headers = new Manifest(in).getMainAttributes();
            return Optional.ofNullable(headers.getValue(name));
        }
    }
}
