// SPDX-License-Identifier: EPL-2.0
/** Studies of events: none is found where nothing happened, and each one is found where it happened. */
package org.dutywright.reference.events;
