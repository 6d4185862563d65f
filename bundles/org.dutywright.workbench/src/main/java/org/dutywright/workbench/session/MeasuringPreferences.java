// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.session;

import java.util.function.Consumer;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.SettingText;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.preferences.IEclipsePreferences;
import org.eclipse.core.runtime.preferences.IEclipsePreferences.IPreferenceChangeListener;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.osgi.service.prefs.BackingStoreException;

/**
 * The settings of measuring in this workspace. Only those that differ from their default are kept, so that a default that
 * a later version changes takes effect.
 */
public final class MeasuringPreferences {
    private static final String NODE = "org.dutywright.workbench";
    private static final String PREFIX = "measuring.";

    private MeasuringPreferences() {}

    /** The settings in use. A value that is none, or is not allowed any more, counts as its default. */
    public static PulseSettings current() {
        IEclipsePreferences node = node();
        PulseSettings settings = PulseSettings.defaults();
        for (PulseSettings.Setting setting : PulseSettings.DECLARED) {
            String text = node.get(PREFIX + setting.id(), "");
            if (!text.isEmpty()) {
                settings = with(settings, setting, text);
            }
        }
        return settings;
    }

    private static PulseSettings with(PulseSettings settings, PulseSettings.Setting setting, String text) {
        try {
            return settings.with(setting, SettingText.parse(setting, text));
        } catch (IllegalArgumentException e) {
            ILog.of(MeasuringPreferences.class).warn("A setting is ignored: " + e.getMessage());
            return settings;
        }
    }

    /** Keeps settings for this workspace; captures in use are measured anew. */
    public static void store(PulseSettings settings) {
        IEclipsePreferences node = node();
        for (PulseSettings.Setting setting : PulseSettings.DECLARED) {
            if (settings.get(setting) == setting.defaultValue()) {
                node.remove(PREFIX + setting.id());
            } else {
                node.put(PREFIX + setting.id(), SettingText.number(settings.get(setting)));
            }
        }
        try {
            node.flush();
        } catch (BackingStoreException e) {
            ILog.of(MeasuringPreferences.class).warn("The settings of measuring could not be saved.", e);
        }
    }

    /** A listener that is told when a setting changed, from here or by an import of preferences; not added yet. */
    static IPreferenceChangeListener listener(Consumer<PulseSettings> changed) {
        return event -> {
            if (event.getKey().startsWith(PREFIX)) {
                changed.accept(current());
            }
        };
    }

    static void add(IPreferenceChangeListener listener) {
        node().addPreferenceChangeListener(listener);
    }

    static void remove(IPreferenceChangeListener listener) {
        node().removePreferenceChangeListener(listener);
    }

    private static IEclipsePreferences node() {
        return InstanceScope.INSTANCE.getNode(NODE);
    }
}
