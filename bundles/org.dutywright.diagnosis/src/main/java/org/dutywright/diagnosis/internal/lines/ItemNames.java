// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.util.ArrayList;
import java.util.List;
import org.dutywright.sensor.Sensor.SensorChannel;

/** Names and units of the lines that the limits of a channel lead to, in the order of the lines. */
final class ItemNames {
    private ItemNames() {}

    /** A line to be. */
    record Item(String name, String unit) {}

    static List<Item> limits(SensorChannel channel) {
        List<Item> items = new ArrayList<>();
        String name = channel.name() + ".";
        channel.frequency().ifPresent(it -> items.add(new Item(name + "frequency", "Hz")));
        channel.lowLevel().ifPresent(it -> items.add(new Item(name + "lowLevel", "V")));
        channel.highLevel().ifPresent(it -> items.add(new Item(name + "highLevel", "V")));
        if (channel.transitionMaxSeconds().isPresent()) {
            items.add(new Item(name + "transition.rise", "s"));
            items.add(new Item(name + "transition.fall", "s"));
        }
        channel.duty().flatMap(DutyBand::allowed).ifPresent(it -> items.add(new Item(name + "duty", "%")));
        if (channel.duty().isPresent()
                && channel.duty().get().tolerancePercent().isPresent()) {
            items.add(new Item(name + "duty.released", "%"));
            items.add(new Item(name + "duty.pressed", "%"));
        }
        return items;
    }
}
