// SPDX-License-Identifier: EPL-2.0
/**
 * From a scenario text to a simulated capture with known faults, and the truth beside it.
 *
 * <h2>Scenario text, {@code schema: dutywright.scenario/1}</h2>
 *
 * YAML. A value with a dimension is a number, a space and a unit. Times are those of the recording. Every problem is
 * reported with its place; a key that is not known is one.
 *
 * <pre>{@code
 * schema: dutywright.scenario/1
 * id: bench-1                     # letters, digits, dots, dashes
 * title: What it shows
 * note: What else there is to say # optional
 * sensor: twin-pedal-200          # active levels and duties that the text leaves out come from this sensor
 * seed: 7                         # all randomness follows from it
 * recording:
 *   sampleRate: 100 kHz           # times duration at most 2e11 samples
 *   duration: 4 s
 *   start: -0.5 s                 # optional, else 0 s
 *   noise: 15 mV                  # RMS of white noise, optional
 *   quantisation: {bits: 12, min: -1 V, max: 19 V}    # or {step: 5 mV}; optional
 *   pauses: [{from: 1 s, to: 1.2 s}]                  # nothing is recorded there
 *   timeColumn: true              # these four optional
 *   timeUnit: s                   # s, ms, us
 *   valueUnit: V                  # V, mV
 *   decimals: 4
 * supply: {volts: 12.3 V, recordedAs: supply, noise: 10 mV}   # optional; recordedAs makes a channel of it
 * travel:                         # one value, or points with straight lines between, and strokes; else 0 %
 *   - {at: 0 s, travel: 0 %}
 *   - {at: 1 s, strokes: 3, to: 100 %, press: 150 ms, hold: 200 ms, release: 200 ms, rest: 300 ms}
 * channels:
 *   - name: signal1
 *     active: high                # else as the sensor
 *     carrier: 200.3 Hz           # its own, below a quarter of the sample rate
 *     phase: 40 %                 # share of its period that has passed at the start, optional
 *     duty: {released: 10 %, pressed: 45 %}   # or 30 %, or points {at: 1 s, duty: 30 %}; else as the sensor
 *     low: 0.4 V
 *     high: 12.3 V
 *     rise: 20 us                 # straight from 0 to 100 %, or {timeConstant: 8 us}; optional, else a step
 *     fall: 12 us
 *     jitter: 2 us                # standard deviation of the period, optional
 *     noise: 20 mV                # else that of the recording
 * faults:                         # optional, below
 *   - {kind: missing-pulse, channel: signal1, at: [0.5 s, 1.5 s], pulses: 2}
 * knownPosition: released         # or pressed: the travel is known to stand there; optional
 * expect: {verdict: does-not-conform, because: [signal1.events.missing-pulse], suspect: sensor}   # optional
 * }</pre>
 *
 * A fault names its {@code channel} or {@code channels} ({@code supply-loss} and {@code ground-lift} meet all where
 * none is named) and its time: {@code at} one or more instants, or {@code from} and {@code to}. {@code every: 1 s,
 * times: 5} repeats it.
 *
 * <table>
 * <caption>Kinds of faults</caption>
 * <tr><th>kind</th><th>time</th><th>keys</th></tr>
 * <tr><td>missing-pulse</td><td>at</td><td>pulses (1)</td></tr>
 * <tr><td>runt</td><td>at</td><td>reach (% of the swing), pulses (1)</td></tr>
 * <tr><td>bounce</td><td>at</td><td>spacing, pairs (1), after: active or inactive edge (active)</td></tr>
 * <tr><td>extra-pulse</td><td>at</td><td>width, reach (100 %)</td></tr>
 * <tr><td>signal-open</td><td>from, to</td><td>level (the high level)</td></tr>
 * <tr><td>supply-loss</td><td>from, to</td><td>restart, level (the high level), firstPeriod (as the others), lost: supply
 * or ground (supply)</td></tr>
 * <tr><td>ground-lift</td><td>from (start), to (end)</td><td>by, liftsHigh (false)</td></tr>
 * <tr><td>level-shift</td><td>from (start), to (end)</td><td>low, high: by how much</td></tr>
 * <tr><td>frequency</td><td>from (start), to (end)</td><td>carrier or factor</td></tr>
 * <tr><td>ratio</td><td>from (start), to (end)</td><td>gain (1), offset (0 %), of the duty</td></tr>
 * <tr><td>duty-jump</td><td>from (start), to (end)</td><td>travel, width, offset: a worn spot</td></tr>
 * <tr><td>stuck-low, stuck-high</td><td>from (start), to (end)</td><td>level (that of the state)</td></tr>
 * <tr><td>slow-edges</td><td>from (start), to (end)</td><td>rise, fall</td></tr>
 * <tr><td>noise-burst</td><td>from, to</td><td>rms, added to the noise that is there</td></tr>
 * </table>
 */
package org.dutywright.simulation;
