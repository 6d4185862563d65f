// SPDX-License-Identifier: EPL-2.0
/** Captures that are also measured by an independent script, so that both can be compared. */
package org.dutywright.reference.outside;
