// SPDX-License-Identifier: EPL-2.0
package org.dutywright.archives;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.jar.JarFile;
import java.util.jar.Manifest;

/** A plug-in of the product: its name and version as its manifest says them. */
record Plugin(String name, String version) {
    static Plugin of(Path file) {
        try {
            Manifest manifest = manifest(file);
            String name = manifest.getMainAttributes().getValue("Bundle-SymbolicName");
            return new Plugin(
                    name.split(";", 2)[0].strip(), manifest.getMainAttributes().getValue("Bundle-Version"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Manifest manifest(Path file) throws IOException {
        if (Files.isDirectory(file)) {
            try (InputStream stream = Files.newInputStream(file.resolve(JarFile.MANIFEST_NAME))) {
                return new Manifest(stream);
            }
        }
        try (JarFile jar = new JarFile(file.toFile())) {
            return jar.getManifest();
        }
    }

    /** Whether this plug-in has a version of Maven's: 2.23 became 2.23.0, and what builds add comes after a dot. */
    boolean hasVersion(String maven) {
        return numbers(version).equals(numbers(maven));
    }

    private static String numbers(String version) {
        String[] parts = version.split("[.-]", -1);
        StringBuilder numbers = new StringBuilder();
        for (int i = 0; i < 3; i++) {
            numbers.append(i < parts.length && parts[i].matches("\\d+") ? Integer.parseInt(parts[i]) : 0)
                    .append('.');
        }
        return numbers.toString();
    }
}
