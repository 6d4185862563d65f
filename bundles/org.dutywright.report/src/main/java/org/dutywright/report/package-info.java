// SPDX-License-Identifier: EPL-2.0
/** Writers of what was measured and judged: JSON and CSV for programs, text for people. */
package org.dutywright.report;
