// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.session;

import org.eclipse.core.resources.IFile;

/**
 * A stretch of a channel, as the platform's selection: the place of an event or of a failed limit.
 *
 * @param file the capture
 * @param channel name of the channel, empty for all of them
 * @param startSeconds where it begins, in the capture's time
 * @param endSeconds where it ends, not before its start
 * @param text what is there, for people
 */
public record SpanSelection(IFile file, String channel, double startSeconds, double endSeconds, String text) {}
