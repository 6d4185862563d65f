// SPDX-License-Identifier: EPL-2.0
/** What the readers share. */
package org.dutywright.capture.formats.internal;
