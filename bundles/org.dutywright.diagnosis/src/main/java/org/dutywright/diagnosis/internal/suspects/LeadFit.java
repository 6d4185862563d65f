// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.suspects;

import java.util.List;

/**
 * A way of connecting or counting under which the recording would fit the sensor text, while as recorded it does not.
 *
 * @param channels the channels concerned
 * @param sentence the measured facts
 */
record LeadFit(List<String> channels, String sentence) {}
