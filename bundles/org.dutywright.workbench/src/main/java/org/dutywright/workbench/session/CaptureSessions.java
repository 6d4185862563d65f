// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.session;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.dutywright.pulse.PulseSettings;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IResourceChangeEvent;
import org.eclipse.core.resources.IResourceChangeListener;
import org.eclipse.core.resources.IResourceDelta;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.preferences.IEclipsePreferences.IPreferenceChangeListener;

/**
 * The captures in use. One that several parts show is opened and measured once; when the last of them has given it back
 * it is closed, its temporary files with it. A file that changes is read anew; where the settings of measuring
 * change, all are measured anew.
 */
public final class CaptureSessions {
    /** Family of the jobs that open and measure; a file is a family of its own job, too. */
    public static final Object FAMILY = CaptureSessions.class;

    private static final Map<IFile, Held> HELD = new HashMap<>();
    private static final IResourceChangeListener CHANGES = CaptureSessions::changed;
    private static final IPreferenceChangeListener SETTINGS =
            MeasuringPreferences.listener(CaptureSessions::settingsChanged);

    private CaptureSessions() {}

    private static final class Held {
        private final CaptureSession session;
        private int holders;

        Held(CaptureSession session) {
            this.session = session;
        }
    }

    /** The session of a file, opened where nobody holds it yet. Each call needs one of {@link #release}. */
    public static CaptureSession acquire(IFile file) {
        synchronized (HELD) {
            if (HELD.isEmpty()) {
                ResourcesPlugin.getWorkspace().addResourceChangeListener(CHANGES, IResourceChangeEvent.POST_CHANGE);
                MeasuringPreferences.add(SETTINGS);
            }
            Held held = HELD.computeIfAbsent(file, key -> {
                Held fresh = new Held(new CaptureSession(key));
                fresh.session.start();
                return fresh;
            });
            held.holders++;
            return held.session;
        }
    }

    /** Gives a session back; it must not be used afterwards. */
    public static void release(CaptureSession session) {
        synchronized (HELD) {
            Held held = HELD.get(session.file());
            if (held == null || held.session != session) {
                throw new IllegalStateException(session.file().getFullPath() + " was given back already");
            }
            held.holders--;
            if (held.holders == 0) {
                HELD.remove(session.file());
                session.dispose();
            }
            if (HELD.isEmpty()) {
                ResourcesPlugin.getWorkspace().removeResourceChangeListener(CHANGES);
                MeasuringPreferences.remove(SETTINGS);
            }
        }
    }

    private static Map<IFile, CaptureSession> held() {
        Map<IFile, CaptureSession> held = new HashMap<>();
        synchronized (HELD) {
            HELD.forEach((file, entry) -> held.put(file, entry.session));
        }
        return held;
    }

    private static void settingsChanged(PulseSettings settings) {
        held().values().forEach(session -> session.measureWith(settings));
    }

    private static void changed(IResourceChangeEvent event) {
        held().forEach((file, session) -> Optional.ofNullable(event.getDelta().findMember(file.getFullPath()))
                .filter(CaptureSessions::hasOtherContent)
                .ifPresent(delta -> session.restart()));
    }

    private static boolean hasOtherContent(IResourceDelta delta) {
        int flags = IResourceDelta.CONTENT | IResourceDelta.REPLACED | IResourceDelta.LOCAL_CHANGED;
        return delta.getKind() == IResourceDelta.ADDED
                || delta.getKind() == IResourceDelta.CHANGED && (delta.getFlags() & flags) != 0;
    }
}
