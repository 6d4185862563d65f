// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import org.dutywright.pulse.PulseSettings.Setting;

/** The limits of the events, part of {@link PulseSettings#DECLARED}. What each kind of event is, {@link EventKind} tells. */
public final class EventSettings {
    /** How many standard uncertainties an event needs. */
    public static final Setting EVENT_SIGMA = new Setting(
            "event.sigma",
            "Certainty of an event",
            "",
            6,
            1,
            50,
            "A value must be beyond a limit of an event, or a sample away from its state, by so many standard uncertainties as well.");

    /** Periods without a transition that make a signal stuck. */
    public static final Setting STUCK_PERIODS = new Setting(
            "stuck.periods",
            "Stuck after",
            "",
            4,
            1,
            1000,
            "A signal without a transition from here to the end of the capture for so many periods is stuck.");

    /** What is high where no other channel tells. */
    public static final Setting STUCK_ALONE = new Setting(
            "stuck.alone",
            "Stuck high above",
            "V",
            1,
            -1000,
            1000,
            "A signal without transitions is stuck high above this level where no other channel tells what high is.");

    /** Absent pulses that make a dropout. */
    public static final Setting DROPOUT_PULSES = new Setting(
            "dropout.pulses",
            "Pulses of a dropout",
            "",
            3,
            2,
            1000,
            "So many pulses absent in a row are a dropout, fewer are missing pulses.");

    /** Distance of active edges in periods that makes a missing pulse. */
    public static final Setting MISSING_FROM = new Setting(
            "missing.from",
            "Missing pulse from",
            "",
            1.5,
            1.1,
            2,
            "A pulse is missing where two active edges lie at least so many periods apart.");

    /** How far a runt leaves its state. */
    public static final Setting RUNT_SHARE = new Setting(
            "runt.share",
            "Runt",
            "%",
            10,
            1,
            45,
            "A runt leaves its state by more than this share of the swing and does not reach the other state.");

    /** How long a runt is outside its state. */
    public static final Setting RUNT_SAMPLES = new Setting(
            "runt.samples",
            "Samples of a runt",
            "",
            2,
            1,
            1000,
            "A runt is outside its state for at least so many samples in a row.");

    /** How long an edge may bounce, in percent of the period. */
    public static final Setting BOUNCE_WINDOW = new Setting(
            "bounce.window",
            "Bounce window",
            "%",
            5,
            0.1,
            20,
            "Further transitions within this share of the period after an edge are its bounce.");

    /** Distance of active edges in periods that makes an extra pulse. */
    public static final Setting EXTRA_WITHIN = new Setting(
            "extra.within",
            "Extra pulse within",
            "",
            0.5,
            0.1,
            0.7,
            "Two active edges less than so many periods apart make an extra pulse.");

    /** How far a period may lie off the median. */
    public static final Setting EXCURSION = new Setting(
            "excursion.share",
            "Period excursion",
            "%",
            5,
            0.1,
            40,
            "A whole cycle further than this share off the median period is a period excursion.");

    /** Change of duty in points that makes a jump. */
    public static final Setting DUTY_JUMP = new Setting(
            "duty-jump.points",
            "Duty jump",
            "%",
            5,
            0.1,
            100,
            "A change of duty by more than so many points from one cycle to the next is a jump where no other channel moves with it.");

    /** How much of a jump another channel must share. */
    public static final Setting DUTY_JUMP_MATCH = new Setting(
            "duty-jump.match",
            "Matching movement",
            "%",
            50,
            1,
            100,
            "Another channel matches a jump if its travel moves the same way by at least this share of it.");

    /** How far the duty of another channel must move where travel is unknown. */
    public static final Setting DUTY_JUMP_POINTS = new Setting(
            "duty-jump.match-points",
            "Matching points",
            "%",
            1,
            0.01,
            100,
            "Where travel is unknown, another channel matches a jump if its duty changes by more than so many points.");

    /** Longest transition in percent of the period. */
    public static final Setting SLOW_EDGE = new Setting(
            "slow-edge.share",
            "Slow edge",
            "%",
            10,
            0.1,
            50,
            "A transition longer than this share of the period is slow where the sensor has no limit of its own.");

    /** How far a state level may move. */
    public static final Setting SHIFT_SHARE = new Setting(
            "level-shift.share",
            "Level shift",
            "%",
            5,
            0.1,
            50,
            "A state level further than this share of the swing off its first value has shifted.");

    /** How many pulses in a row make a level shift. */
    public static final Setting SHIFT_PULSES = new Setting(
            "level-shift.pulses",
            "Pulses of a level shift",
            "",
            3,
            1,
            1000,
            "So many pulses in a row must be off for a level shift.");

    private EventSettings() {}
}
