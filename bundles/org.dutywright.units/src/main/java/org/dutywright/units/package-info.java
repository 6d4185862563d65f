// SPDX-License-Identifier: EPL-2.0
/** Quantities with units: parsing, converting and printing. */
package org.dutywright.units;
