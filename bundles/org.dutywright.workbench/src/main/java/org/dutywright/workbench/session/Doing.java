// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.session;

import java.util.OptionalDouble;

/**
 * What is being done.
 *
 * @param task in words for the user, empty before work begins
 * @param share of it that is done, 0 to 1, empty where its amount is not known
 */
public record Doing(String task, OptionalDouble share) {}
