// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.dutywright.workbench.WindowWords;
import org.dutywright.workbench.session.Findings;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.IWorkspace;
import org.eclipse.core.runtime.CoreException;

/** Puts findings on a capture as markers, in the place of those of an earlier check. */
final class FindingMarkers {
    private FindingMarkers() {}

    static void replace(IFile file, List<Finding> findings) throws CoreException {
        IWorkspace workspace = file.getWorkspace();
        workspace.run(
                monitor -> {
                    file.deleteMarkers(Findings.MARKER, true, IResource.DEPTH_ZERO);
                    for (Finding finding : findings) {
                        file.createMarker(Findings.MARKER, attributes(finding));
                    }
                },
                workspace.getRuleFactory().markerRule(file),
                IWorkspace.AVOID_UPDATE,
                null);
    }

    static Map<String, Object> attributes(Finding finding) {
        Map<String, Object> attributes = new HashMap<>();
        attributes.put(IMarker.MESSAGE, WindowWords.of(finding.message()));
        attributes.put(IMarker.SEVERITY, finding.failed() ? IMarker.SEVERITY_ERROR : IMarker.SEVERITY_WARNING);
        attributes.put(Findings.ITEM, finding.item());
        String channel = finding.place().channel();
        if (!channel.isEmpty()) {
            attributes.put(Findings.CHANNEL, channel);
            attributes.put(IMarker.LOCATION, channel);
        }
        finding.place().span().ifPresent(span -> {
            attributes.put(Findings.START_SECONDS, Double.toString(span.startSeconds()));
            attributes.put(Findings.END_SECONDS, Double.toString(span.endSeconds()));
            String instant = String.format(Locale.ROOT, "%.6f s", span.startSeconds());
            attributes.put(IMarker.LOCATION, channel.isEmpty() ? instant : channel + ", " + instant);
        });
        return attributes;
    }
}
