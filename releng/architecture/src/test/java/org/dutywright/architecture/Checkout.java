// SPDX-License-Identifier: EPL-2.0
package org.dutywright.architecture;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** The project's folder on disk, found by walking up from where the test runs. */
final class Checkout {
    /** Names of what is never committed; in a linked work tree, .git is a file. */
    private static final Set<String> NOT_COMMITTED = Set.of(".git", ".tools", "target", "work");

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

    /** The names of the bundles that are there. */
    static List<String> bundles() throws IOException {
        try (Stream<Path> folders = Files.list(root().resolve("bundles"))) {
            return folders.filter(folder -> Files.isRegularFile(folder.resolve("pom.xml")))
                    .map(folder -> folder.getFileName().toString())
                    .sorted()
                    .toList();
        }
    }

    /** Those of the core: bnd writes their manifests, while a bundle of the workbench brings its own. */
    static List<String> coreBundles() throws IOException {
        return bundles().stream()
                .filter(bundle -> Files.notExists(
                        root().resolve("bundles").resolve(bundle).resolve("META-INF")))
                .toList();
    }

    /** Where the classes and the manifest of a bundle were built. */
    static Path classesOf(String bundle) {
        return root().resolve("bundles").resolve(bundle).resolve("target").resolve("classes");
    }

    /** All files that are, or could be, committed. */
    static List<Path> files() throws IOException {
        List<Path> files = new ArrayList<>();
        Files.walkFileTree(root(), new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
                boolean skipped =
                        NOT_COMMITTED.contains(String.valueOf(folder.getFileName())) && !folder.equals(root());
                return skipped ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                if (!NOT_COMMITTED.contains(String.valueOf(file.getFileName()))) {
                    files.add(file);
                }
                return FileVisitResult.CONTINUE;
            }
        });
        return files;
    }
}
