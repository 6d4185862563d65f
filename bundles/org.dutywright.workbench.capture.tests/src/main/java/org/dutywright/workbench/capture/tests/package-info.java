// SPDX-License-Identifier: EPL-2.0
/** Tests of the capture editor and of the view logic below it. */
package org.dutywright.workbench.capture.tests;
