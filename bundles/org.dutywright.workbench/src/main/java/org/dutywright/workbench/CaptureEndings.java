// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench;

import java.util.Locale;
import java.util.Set;
import org.eclipse.core.resources.IFile;

/**
 * Endings that recordings usually have. Readers judge by content; these only say where it is worth to look, so that the
 * contents of a whole workspace need not be read to draw a menu.
 */
public final class CaptureEndings {
    private static final Set<String> ALL =
            Set.of("csv", "tsv", "txt", "arrow", "wav", "cfg", "cff", "vcd", "npy", "npz", "h5", "hdf5", "hdf", "mat");

    private CaptureEndings() {}

    /** Whether a file has one of them, in whatever case. */
    public static boolean has(IFile file) {
        return file.getFileExtension() != null
                && ALL.contains(file.getFileExtension().toLowerCase(Locale.ROOT));
    }
}
