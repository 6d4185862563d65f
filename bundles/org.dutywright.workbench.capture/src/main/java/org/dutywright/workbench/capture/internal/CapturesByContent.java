// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import org.dutywright.capture.InstalledReaders;
import org.dutywright.workbench.CaptureEndings;
import org.dutywright.workbench.WorkbenchIds;
import org.dutywright.workbench.capture.CaptureEditor;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.content.IContentType;
import org.eclipse.ui.IEditorDescriptor;
import org.eclipse.ui.IEditorInput;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.ide.IEditorAssociationOverride;
import org.eclipse.ui.ide.ResourceUtil;

/**
 * Opens recordings in the capture editor. Notes, settings and pictures may have the same endings, so the content decides, and
 * only the files of jobs are looked at.
 */
public final class CapturesByContent implements IEditorAssociationOverride {
    /** As much as readers judge by. */
    private static final int HEAD_BYTES = 1 << 16;
    /** Of 100: a reader rather takes the file for its own than not. */
    private static final int LIKELY = 50;

    @Override
    public IEditorDescriptor overrideDefaultEditor(
            IEditorInput input, IContentType type, IEditorDescriptor descriptor) {
        return file(input)
                .filter(file -> !isChosen(file) && isCapture(file))
                .flatMap(file -> editor())
                .orElse(descriptor);
    }

    @Override
    public IEditorDescriptor overrideDefaultEditor(String name, IContentType type, IEditorDescriptor descriptor) {
        return descriptor;
    }

    @Override
    public IEditorDescriptor[] overrideEditors(IEditorInput input, IContentType type, IEditorDescriptor[] descriptors) {
        Optional<IEditorDescriptor> ours = file(input)
                .filter(CapturesByContent::isCapture)
                .flatMap(file -> editor())
                .filter(editor -> !Arrays.asList(descriptors).contains(editor));
        return ours.map(editor -> Stream.concat(Stream.of(editor), Arrays.stream(descriptors))
                        .toArray(IEditorDescriptor[]::new))
                .orElse(descriptors);
    }

    @Override
    public IEditorDescriptor[] overrideEditors(String name, IContentType type, IEditorDescriptor[] descriptors) {
        return descriptors;
    }

    private static Optional<IFile> file(IEditorInput input) {
        return Optional.ofNullable(ResourceUtil.getFile(input));
    }

    private static Optional<IEditorDescriptor> editor() {
        return Optional.ofNullable(PlatformUI.getWorkbench().getEditorRegistry().findEditor(CaptureEditor.ID));
    }

    // What the user took from Open With is the platform's to remember, and not ours to turn around.
    private static boolean isChosen(IFile file) {
        try {
            return file.getPersistentProperty(IDE.EDITOR_KEY) != null;
        } catch (CoreException e) {
            // A file that is gone has no editor of its own.
            return false;
        }
    }

    private static boolean isCapture(IFile file) {
        try {
            if (!CaptureEndings.has(file) || !file.getProject().hasNature(WorkbenchIds.JOB_NATURE)) {
                return false;
            }
            byte[] head = head(file);
            return InstalledReaders.find().readers().stream().anyMatch(reader -> reader.likelihood(head) >= LIKELY);
        } catch (CoreException | IOException e) {
            // A file that cannot be looked into is opened as the platform would; its editor says what is wrong.
            return false;
        }
    }

    private static byte[] head(IFile file) throws CoreException, IOException {
        try (InputStream stream = file.getContents(true)) {
            return stream.readNBytes(HEAD_BYTES);
        }
    }
}
