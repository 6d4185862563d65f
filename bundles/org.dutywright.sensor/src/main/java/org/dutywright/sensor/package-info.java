// SPDX-License-Identifier: EPL-2.0
/** The sensor catalogue: model, text and validation. */
package org.dutywright.sensor;
