// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.util.List;

/**
 * One quantity of all channels.
 *
 * @param label the quantity
 * @param values as text, one for each channel, empty where a channel does not have it
 */
record SummaryRow(String label, List<String> values) {
    SummaryRow {
        values = List.copyOf(values);
    }
}
