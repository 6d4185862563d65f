// SPDX-License-Identifier: EPL-2.0
/** Ids of the view that shows what was measured, and of the command that checks a capture. */
package org.dutywright.workbench.pulse;
