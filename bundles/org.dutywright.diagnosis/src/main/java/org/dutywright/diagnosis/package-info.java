// SPDX-License-Identifier: EPL-2.0
/** From measured cycles and a sensor text to lines, agreement, verdict and suspects. */
package org.dutywright.diagnosis;
