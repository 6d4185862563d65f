// SPDX-License-Identifier: EPL-2.0
/** What the workbench's other bundles build on: ids, progress of the core in a progress monitor, ids of widgets. */
package org.dutywright.workbench;
