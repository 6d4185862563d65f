// SPDX-License-Identifier: EPL-2.0
/** The view of what was measured, and the check of a capture against a sensor. */
package org.dutywright.workbench.pulse.internal;
