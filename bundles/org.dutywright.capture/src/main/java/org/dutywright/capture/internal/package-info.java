// SPDX-License-Identifier: EPL-2.0
/** How captures are kept and how their time base is found; not for other bundles. */
package org.dutywright.capture.internal;
