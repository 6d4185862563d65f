// SPDX-License-Identifier: EPL-2.0
/** Studies over many simulated captures that show how good the measured numbers are. No part of the product. */
package org.dutywright.reference;
