// SPDX-License-Identifier: EPL-2.0
/** Drives a real window from a test: by widget names and conditions, never by labels and never by sleeping. */
package org.dutywright.workbench.tests.kit;
