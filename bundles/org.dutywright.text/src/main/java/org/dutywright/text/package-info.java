// SPDX-License-Identifier: EPL-2.0
/** YAML texts with line and column marks and all their problems. */
package org.dutywright.text;
