// SPDX-License-Identifier: EPL-2.0
package org.dutywright.archives;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The project's folder and what the build has left in it. */
final class Checkout {
    private Checkout() {}

    static Path root() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(folder.resolve("releng")) || !Files.isRegularFile(folder.resolve("pom.xml"))) {
            folder = folder.getParent();
            if (folder == null) {
                throw new AssertionError("no folder above the test's holds both releng and pom.xml");
            }
        }
        return folder;
    }

    /** An archive by what follows the version in its name. */
    static Path archive(String system) {
        return root().resolve("releng/product/target/archives/dutywright-" + System.getProperty("dutywright.version")
                + "-" + system);
    }

    /** The plug-ins of the product for Linux, as they go into its archive. */
    static List<Path> plugins() throws IOException {
        Path folder = root().resolve(
                        "releng/product/target/products/org.dutywright.workbench.product/linux/gtk/x86_64/plugins");
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }
}
