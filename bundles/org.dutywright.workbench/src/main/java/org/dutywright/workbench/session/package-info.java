// SPDX-License-Identifier: EPL-2.0
/** Captures that are open in the workbench, what was measured on them, and how its parts point at a place in one. */
package org.dutywright.workbench.session;
