// SPDX-License-Identifier: EPL-2.0
/** From a scenario text to a simulated capture with known faults, and the truth beside it. */
package org.dutywright.simulation;
