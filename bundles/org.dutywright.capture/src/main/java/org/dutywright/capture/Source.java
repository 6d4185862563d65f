// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.nio.file.Path;

/**
 * The file that a capture was read from.
 *
 * @param path as the user named it
 * @param sha256 of its bytes, 64 lower-case hexadecimal digits
 */
public record Source(Path path, String sha256) {}
