// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.session;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.dutywright.capture.Capture;
import org.dutywright.diagnosis.Checker;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.sensor.Catalogue;
import org.dutywright.sensor.Sensor;
import org.eclipse.core.resources.IContainer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ProjectScope;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.QualifiedName;
import org.eclipse.core.runtime.preferences.IEclipsePreferences;
import org.osgi.service.prefs.BackingStoreException;

/**
 * Which sensor a capture is compared with: the one chosen for it last, else the one chosen last in its project. The
 * choice goes along with the project.
 */
public final class SensorChoice {
    private static final String NODE = "org.dutywright.workbench";
    private static final String KEY = "sensor";
    private static final QualifiedName FILE_KEY = new QualifiedName(NODE, KEY);
    private static final String SCHEMA = "dutywright.sensor/";
    private static final int HEAD_BYTES = 4096;

    private SensorChoice() {}

    /** Id of the sensor chosen for a capture, empty where none was chosen yet. */
    public static Optional<String> of(IFile capture) {
        try {
            String own = capture.getPersistentProperty(FILE_KEY);
            String ofProject = preferences(capture.getProject()).get(KEY, "");
            return Optional.ofNullable(own).or(() -> Optional.of(ofProject).filter(id -> !id.isEmpty()));
        } catch (CoreException e) {
            // A file that is gone or outside the workspace has no choice.
            return Optional.empty();
        }
    }

    /** Remembers the choice for a capture, and for those of its project that have none of their own. */
    public static void remember(IFile capture, String sensorId) throws CoreException {
        capture.setPersistentProperty(FILE_KEY, sensorId);
        IEclipsePreferences preferences = preferences(capture.getProject());
        preferences.put(KEY, sensorId);
        try {
            preferences.flush();
        } catch (BackingStoreException e) {
            ILog.of(SensorChoice.class).warn("The choice of the sensor could not be saved.", e);
        }
    }

    private static IEclipsePreferences preferences(IProject project) {
        return new ProjectScope(project).getNode(NODE);
    }

    /** The built-in sensors and those whose texts lie in the project. */
    public static Catalogue catalogue(IProject project) throws IOException, CoreException {
        Catalogue catalogue = Catalogue.builtIn();
        for (Path folder : foldersWithSensorTexts(project)) {
            catalogue = catalogue.with(folder);
        }
        return catalogue;
    }

    // Other texts in YAML lie in a project as well, so only folders with a sensor text are looked into.
    private static Set<Path> foldersWithSensorTexts(IProject project) throws IOException, CoreException {
        Set<Path> folders = new LinkedHashSet<>();
        for (IFile file : texts(project)) {
            if (isSensorText(file.getLocation().toPath())) {
                folders.add(file.getLocation().toPath().getParent());
            }
        }
        return folders;
    }

    private static List<IFile> texts(IContainer container) throws CoreException {
        List<IFile> texts = new ArrayList<>();
        container.accept(resource -> {
            if (resource instanceof IFile file
                    && file.getLocation() != null
                    && ("yaml".equals(file.getFileExtension()) || "yml".equals(file.getFileExtension()))) {
                texts.add(file);
            }
            return resource.getType() != IResource.FOLDER || !resource.isDerived();
        });
        return texts;
    }

    private static boolean isSensorText(Path file) throws IOException {
        try (InputStream stream = Files.newInputStream(file)) {
            return new String(stream.readNBytes(HEAD_BYTES), StandardCharsets.UTF_8).contains(SCHEMA);
        }
    }

    /** What is known of the channels of a capture by the sensor chosen for it; nothing where none was chosen. */
    static Map<String, ChannelPlan> plans(IFile file, Capture capture) {
        Optional<String> id = of(file);
        if (id.isEmpty()) {
            return Map.of();
        }
        try {
            return catalogue(file.getProject())
                    .find(id.get())
                    .map(entry -> plans(entry.sensor(), capture))
                    .orElse(Map.of());
        } catch (IOException | CoreException e) {
            ILog.of(SensorChoice.class).warn("The sensor " + id.get() + " could not be looked up.", e);
            return Map.of();
        }
    }

    /** What a sensor tells of the channels of a capture, by the capture's names. */
    public static Map<String, ChannelPlan> plans(Sensor sensor, Capture capture) {
        return Checker.plans(sensor, Checker.match(sensor, capture, Map.of()), Map.of());
    }
}
