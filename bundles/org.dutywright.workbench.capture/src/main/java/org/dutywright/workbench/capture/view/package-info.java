// SPDX-License-Identifier: EPL-2.0
/** What the traces of a capture look like in a window of time, worked out without a window system. */
package org.dutywright.workbench.capture.view;
