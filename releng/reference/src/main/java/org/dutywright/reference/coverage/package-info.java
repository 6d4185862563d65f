// SPDX-License-Identifier: EPL-2.0
/** How often the stated intervals hold the truth. */
package org.dutywright.reference.coverage;
