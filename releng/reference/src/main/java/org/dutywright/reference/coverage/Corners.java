// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.coverage;

import java.util.List;

/** The corners looked at: noise, sample rate, duty, transitions, codes, jitter and recorder. */
final class Corners {
    /** All of them. */
    static final List<Corner> ALL = List.of(
            Corner.named("plain"),
            Corner.named("noisy").noise(0.05, 0),
            Corner.named("noise-alike").noise(0.02, 0.7),
            Corner.named("fine-noise").noise(0.002, 0),
            Corner.named("instant").edges(Form.RAMP, 0, Form.RAMP, 0),
            Corner.named("instant-locked").edges(Form.RAMP, 0, Form.RAMP, 0).lockedToSamples(),
            Corner.named("instant-coarse").edges(Form.RAMP, 0, Form.RAMP, 0).rate(20e3),
            Corner.named("locked").lockedToSamples(),
            Corner.named("slow-ramp").edges(Form.RAMP, 300e-6, Form.RAMP, 300e-6),
            Corner.named("slow-ramp-noisy")
                    .edges(Form.RAMP, 300e-6, Form.RAMP, 300e-6)
                    .noise(0.05, 0),
            Corner.named("slow-ramp-alike")
                    .edges(Form.RAMP, 300e-6, Form.RAMP, 300e-6)
                    .noise(0.02, 0.7),
            Corner.named("pull-up").edges(Form.EXPONENTIAL, 20e-6, Form.RAMP, 5e-6),
            Corner.named("weak-pull-up").edges(Form.EXPONENTIAL, 100e-6, Form.RAMP, 5e-6),
            Corner.named("gaussian").edges(Form.GAUSSIAN, 20e-6, Form.GAUSSIAN, 20e-6),
            Corner.named("short-pulse").duty(0.03, 0),
            Corner.named("long-pulse").duty(0.97, 0),
            Corner.named("unsettled")
                    .duty(0.066, 0)
                    .edges(Form.EXPONENTIAL, 100e-6, Form.EXPONENTIAL, 100e-6)
                    .noise(0.003, 0),
            Corner.named("moving").duty(0.1, 0.35),
            Corner.named("codes-only").noise(0, 0).bits(8),
            Corner.named("codes-and-noise").bits(8),
            Corner.named("fast-recorder").rate(1e6).noise(0.02, 0),
            Corner.named("jitter").jitter(10e-6),
            Corner.named("jitter-coarse")
                    .jitter(3e-6)
                    .edges(Form.RAMP, 0, Form.RAMP, 0)
                    .rate(50e3),
            Corner.named("recorder-stated").instrument(0.01, 0.02),
            Corner.named("input-low").edges(Form.RAMP, 100e-6, Form.RAMP, 50e-6).input(0.3, 0.1),
            Corner.named("input-low-instant").edges(Form.RAMP, 0, Form.RAMP, 0).input(0.3, 0.1),
            Corner.named("input-low-coarse")
                    .edges(Form.RAMP, 0, Form.RAMP, 0)
                    .rate(20e3)
                    .input(0.3, 0.1),
            Corner.named("input-high-pull-up")
                    .edges(Form.EXPONENTIAL, 20e-6, Form.RAMP, 5e-6)
                    .input(0.9, 0.5),
            Corner.named("input-high-weak")
                    .edges(Form.EXPONENTIAL, 100e-6, Form.RAMP, 5e-6)
                    .input(0.9, 0.5),
            Corner.named("ringing").edges(Form.RINGING, 10e-6, Form.RINGING, 10e-6),
            Corner.named("ringing-fine")
                    .edges(Form.RINGING, 10e-6, Form.RINGING, 10e-6)
                    .rate(1e6)
                    .noise(0.02, 0),
            Corner.named("ringing-locked")
                    .edges(Form.RINGING, 10e-6, Form.RINGING, 10e-6)
                    .lockedToSamples(),
            Corner.named("gap").withGap(),
            Corner.named("gap-instant").withGap().edges(Form.RAMP, 0, Form.RAMP, 0));

    private Corners() {}
}
