// SPDX-License-Identifier: EPL-2.0
/** Tests of all parts of the window together: the whole way through it, its themes, and pictures of it. */
package org.dutywright.workbench.product.tests;
