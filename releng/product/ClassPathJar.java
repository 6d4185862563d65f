// SPDX-License-Identifier: EPL-2.0
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Writes the jar that starts the command line from an unpacked product. It holds nothing but a manifest, whose class path
 * names those of the product's plug-ins that the command line is made of, so that no library lies in an archive twice:
 *
 * <pre>java ClassPathJar.java FOLDER_OF_THE_COMMAND_LINE'S_JARS PLUGINS_FOLDER JAR</pre>
 *
 * A plug-in has another file name than the jar it was made of, and a library without a manifest of its own was wrapped,
 * so the two are matched by the classes in them.
 */
final class ClassPathJar {
    private ClassPathJar() {}

    public static void main(String[] arguments) throws IOException {
        Path plugins = Path.of(arguments[1]);
        Path target = Path.of(arguments[2]);
        List<Path> candidates = jars(plugins);
        List<String> names = new ArrayList<>();
        for (Path jar : jars(Path.of(arguments[0]))) {
            names.add("../plugins/" + pluginWith(classes(jar), candidates, jar).getFileName());
        }
        Manifest manifest = new Manifest();
        manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
        manifest.getMainAttributes().put(Attributes.Name.MAIN_CLASS, "org.dutywright.cli.Main");
        manifest.getMainAttributes().put(Attributes.Name.CLASS_PATH, String.join(" ", names));
        Files.createDirectories(target.getParent());
        new JarOutputStream(Files.newOutputStream(target), manifest).close();
    }

    private static List<Path> jars(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".jar")).sorted().toList();
        }
    }

    private static Path pluginWith(Set<String> wanted, List<Path> candidates, Path jar) {
        List<Path> found = candidates.stream()
                .filter(candidate -> classes(candidate).containsAll(wanted))
                .toList();
        if (found.size() != 1) {
            throw new IllegalStateException(
                    "the classes of " + jar + " are in " + found.size() + " plug-ins: " + found + "; it takes one");
        }
        return found.getFirst();
    }

    /** Classes outside packages and versions: module-info tells nothing of where a class is from. */
    private static Set<String> classes(Path jar) {
        try (JarFile file = new JarFile(jar.toFile())) {
            return file.stream()
                    .map(entry -> entry.getName())
                    .filter(name -> name.endsWith(".class") && name.contains("/") && !name.startsWith("META-INF/"))
                    .collect(Collectors.toSet());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
