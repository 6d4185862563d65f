// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.session;

import org.eclipse.core.resources.IFile;

/**
 * One cycle, as the platform's selection: who shows the capture shows the cycle.
 *
 * @param file the capture
 * @param channel name of the channel
 * @param cycle index in the channel's table of cycles
 * @param startSeconds where it begins, in the capture's time
 * @param endSeconds where it ends
 */
public record CycleSelection(IFile file, String channel, long cycle, double startSeconds, double endSeconds) {}
