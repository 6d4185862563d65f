// SPDX-License-Identifier: EPL-2.0
package org.dutywright.archives;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Properties;
import java.util.jar.JarFile;
import org.junit.jupiter.api.Test;

/** What the product starts by itself: the mediator finds services only in bundles that run. */
final class StartTest {
    private static final String MEDIATOR = "org.apache.aries.spifly.dynamic.bundle";

    @Test
    void every_bundle_of_ours_that_provides_a_service_is_started() throws IOException {
        List<String> providers = Checkout.plugins().stream()
                .filter(StartTest::provides)
                .map(StartTest::name)
                .toList();

        assertThat(providers)
                .contains("org.dutywright.capture", "org.dutywright.capture.formats", "org.dutywright.pulse")
                .allSatisfy(provider -> assertThat(level(provider)).isPositive());
    }

    @Test
    void the_mediator_is_started_before_them() throws IOException {
        assertThat(level(MEDIATOR)).isPositive().isLessThan(level("org.dutywright.capture.formats"));
    }

    private static boolean provides(Path plugin) {
        if (!name(plugin).startsWith("org.dutywright.")) {
            return false;
        }
        try (JarFile jar = new JarFile(plugin.toFile())) {
            String provided = jar.getManifest().getMainAttributes().getValue("Provide-Capability");
            return provided != null && provided.contains("osgi.serviceloader");
        } catch (IOException e) {
            throw new AssertionError(plugin + " cannot be read", e);
        }
    }

    private static String name(Path plugin) {
        return Plugin.of(plugin).name();
    }

    /** The level at which the framework starts a bundle, 0 where it does not. */
    private static int level(String bundle) throws IOException {
        Properties configuration = new Properties();
        try (var reader =
                Files.newBufferedReader(Checkout.plugins().getFirst().resolveSibling("../configuration/config.ini"))) {
            configuration.load(reader);
        }
        return Arrays.stream(configuration.getProperty("osgi.bundles").split(",", -1))
                .filter(entry -> entry.startsWith("reference:file:" + bundle + "_") && entry.endsWith(":start"))
                .map(entry -> entry.substring(entry.lastIndexOf('@') + 1, entry.lastIndexOf(':')))
                .mapToInt(Integer::parseInt)
                .findFirst()
                .orElse(0);
    }
}
