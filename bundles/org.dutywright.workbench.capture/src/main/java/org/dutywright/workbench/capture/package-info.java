// SPDX-License-Identifier: EPL-2.0
/** The editor that shows the traces of a capture. */
package org.dutywright.workbench.capture;
