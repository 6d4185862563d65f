// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Channel;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.Role;

/** Roles and active levels that the user gave, checked against the channels that are there. */
final class ChannelPlans {
    private ChannelPlans() {}

    /** Reads {@code --role} and {@code --active}; words that are none are refused before any file is read. */
    static Map<String, ChannelPlan> parse(List<String> roles, List<String> actives) {
        Map<String, ChannelPlan> plans = new LinkedHashMap<>();
        Assignment.parseAll("--role", "NAME=ROLE", roles).forEach((name, word) -> {
            Role role = word("--role", name, word, Role.values(), Role::word);
            plans.put(
                    name,
                    new ChannelPlan(Optional.of(role), Optional.empty(), Optional.empty(), OptionalDouble.empty()));
        });
        Assignment.parseAll("--active", "NAME=high or NAME=low", actives).forEach((name, word) -> {
            ActiveLevel active = word("--active", name, word, ActiveLevel.values(), ActiveLevel::word);
            Optional<Role> role = Optional.ofNullable(plans.get(name)).flatMap(ChannelPlan::role);
            plans.put(name, new ChannelPlan(role, Optional.of(active), Optional.empty(), OptionalDouble.empty()));
        });
        return plans;
    }

    /** The same with roles from a text of settings, where none was given. */
    static Map<String, ChannelPlan> with(Map<String, ChannelPlan> plans, Map<String, String> roles) {
        Map<String, ChannelPlan> all = new LinkedHashMap<>(plans);
        roles.forEach((name, word) -> {
            Optional<ChannelPlan> given = Optional.ofNullable(plans.get(name));
            Role role = given.flatMap(ChannelPlan::role)
                    .orElseGet(() -> word("role of", name, word, Role.values(), Role::word));
            Optional<ActiveLevel> active = given.flatMap(ChannelPlan::active);
            all.put(name, new ChannelPlan(Optional.of(role), active, Optional.empty(), OptionalDouble.empty()));
        });
        return all;
    }

    /** Words of the roles that are known, by channel. */
    static Map<String, String> roles(Map<String, ChannelPlan> plans) {
        Map<String, String> roles = new LinkedHashMap<>();
        plans.forEach((name, plan) -> plan.role().ifPresent(role -> roles.put(name, role.word())));
        return roles;
    }

    private static <T> T word(String option, String name, String text, T[] values, Function<T, String> words) {
        return Arrays.stream(values)
                .filter(value -> words.apply(value).equals(text))
                .findFirst()
                .orElseThrow(() -> CommandFailure.usage(option + " " + name + "=" + text + ": " + text
                        + " is not one of "
                        + Arrays.stream(values).map(words).collect(Collectors.joining(", "))));
    }

    /**
     * Makes sure that each named channel is there.
     *
     * @throws CommandFailure naming the first that is not, and those that are
     */
    static void checkNames(Map<String, ChannelPlan> plans, Capture capture) {
        List<String> names = capture.channels().stream().map(Channel::name).toList();
        for (String name : plans.keySet()) {
            if (!names.contains(name)) {
                throw CommandFailure.usage("no channel is named " + name + "; there are " + String.join(", ", names));
            }
        }
    }
}
