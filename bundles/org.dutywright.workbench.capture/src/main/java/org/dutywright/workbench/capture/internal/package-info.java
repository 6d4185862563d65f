// SPDX-License-Identifier: EPL-2.0
/** Widgets of the capture editor. */
package org.dutywright.workbench.capture.internal;
