// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.eclipse.core.resources.IFile;

/** The last report on each capture since the workbench started. Safe for several threads. */
public final class CheckReports {
    private static final Map<IFile, CheckReport> REPORTS = new ConcurrentHashMap<>();
    private static final List<Consumer<IFile>> LISTENERS = new CopyOnWriteArrayList<>();

    private CheckReports() {}

    static void put(IFile file, CheckReport report) {
        REPORTS.put(file, report);
        LISTENERS.forEach(listener -> listener.accept(file));
    }

    /** The last report on a capture, empty if there is none. */
    public static Optional<CheckReport> of(IFile file) {
        return Optional.ofNullable(REPORTS.get(file));
    }

    static void forget(IFile file) {
        REPORTS.remove(file);
    }

    static void addListener(Consumer<IFile> inAnyThread) {
        LISTENERS.add(inAnyThread);
    }

    static void removeListener(Consumer<IFile> inAnyThread) {
        LISTENERS.remove(inAnyThread);
    }
}
