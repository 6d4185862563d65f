// SPDX-License-Identifier: EPL-2.0
/** The command line. */
package org.dutywright.cli;
