// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Small scenarios and captures for tests; all numbers are invented. */
final class Texts {
    private Texts() {}

    /** Two channels that move and conform to twin-pedal-200 at a supply of 12 V. */
    static final String HEALTHY = scenario("0.5 s", "");

    /** The same with three missing pulses on signal1, none beside another. */
    static final String MISSING_PULSES =
            scenario("0.5 s", "faults:\n  - {kind: missing-pulse, channel: signal1, at: [0.1 s, 0.2 s, 0.3 s]}\n");

    static String scenario(String duration, String tail) {
        return """
                schema: dutywright.scenario/1
                id: yard-test
                title: Made for a test
                sensor: twin-pedal-200
                seed: 7
                recording:
                  sampleRate: 50 kHz
                  duration: DURATION
                  noise: 10 mV
                supply: {volts: 12 V}
                travel:
                  - {at: 0 s, travel: 20 %}
                  - {at: 0.4 s, travel: 30 %}
                channels:
                  - {name: signal1, carrier: 200 Hz, low: 0.4 V, high: 12 V, rise: 40 us, fall: 40 us}
                  - {name: signal2, carrier: 201 Hz, low: 0.4 V, high: 12 V, rise: 40 us, fall: 40 us}
                """.replace("DURATION", duration) + tail;
    }

    /** Simulates a scenario into a folder as {@code NAME.csv}. */
    static Path simulate(Path folder, String name, String scenario) throws IOException {
        Path text = Files.writeString(folder.resolve(name + ".yaml"), scenario);
        Path csv = folder.resolve(name + ".csv");
        Run run = Run.of("simulate", text, "--to", csv);
        if (run.status() != 0) {
            throw new IllegalStateException(run.err());
        }
        return csv;
    }
}
