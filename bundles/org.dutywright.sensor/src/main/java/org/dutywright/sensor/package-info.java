// SPDX-License-Identifier: EPL-2.0
/**
 * The sensor catalogue: model, text and validation. {@link org.dutywright.sensor.SensorText} reads one text,
 * {@link org.dutywright.sensor.Catalogue} holds the built-in ones and those of folders.
 *
 * <p>A sensor text is YAML 1.2 in UTF-8, one sensor a file:
 *
 * <pre>{@code
 * schema: dutywright.sensor/1
 * id: twin-pedal-200              # letters, digits, dots and dashes
 * title: Twin-channel pedal position sensor, fixed 200 Hz carrier
 * source: {document: "Where the numbers come from", revision: "1", date: 2026-11-25}
 * quantity: {name: pedal travel, unit: "%", released: 0, pressed: 100}
 * supply: {min: 9 V, max: 32 V}
 * channels:
 *   - name: signal1
 *     active: high                # the level whose share of the period is the duty; high where absent
 *     frequency: {min: 180 Hz, max: 220 Hz}
 *     lowLevel: {max: 1.0 V}
 *     highLevel: {min: 75 % of supply, max: 16.0 V}
 *     input: {rising: 3.5 V, falling: 1.5 V}    # thresholds of the module's input
 *     duty: {released: 10 %, pressed: 45 %, tolerance: 2 %, valid: {min: 5 %, max: 95 %}}
 *     transition: {max: 100 us}
 *   - name: signal2
 *     active: low
 *     duty: {released: 20 %, pressed: 90 %, tolerance: 3 %}
 * agreement: {tolerance: 4 %, moving: 8 %, movingAbove: 50 %/s, confirmation: 200 ms}   # of travel
 * events: {runt: {max: 3}, level-shift: ignore}
 * decision: {rule: three-way, coverage: 2}
 * }</pre>
 *
 * <ul>
 *   <li>{@code schema}, {@code id}, {@code title} and {@code channels} must be there, and {@code name} in each channel;
 *       its name is that of a column of the capture. All else may be absent; a limit that is absent is not judged.
 *   <li>A range has {@code min}, {@code max} or both, a value that equals a limit keeps it. A {@code duty} has both end points, a
 *       {@code transition} its {@code max}, an {@code input} both thresholds, an {@code agreement} its
 *       {@code tolerance} and {@code confirmation}, and {@code moving} only together with {@code movingAbove}.
 *   <li>A value with a dimension is a number, a space and a unit with or without SI prefix; a number alone is refused.
 *       Only {@code lowLevel} and {@code highLevel} may be in {@code % of supply}.
 *   <li>{@code tolerance} and {@code valid} of a duty are percentage points of duty.
 *   <li>{@code events} names kinds of events with the number that is allowed on each channel, or {@code ignore}. The
 *       kinds of {@link org.dutywright.sensor.SensorText#JUDGED_EVENTS} are judged, none allowed, where it says
 *       nothing; the others of {@link org.dutywright.sensor.SensorText#EVENT_KINDS} only where it names them.
 *   <li>{@code decision.rule} is {@code simple}, {@code guarded-acceptance} or {@code three-way} after JCGM 106, and
 *       {@code coverage} the number of standard uncertainties of its guard band; three-way with 2 where absent.
 * </ul>
 *
 * <p>What contradicts itself is a problem as well: a minimum above its maximum, equal end points of a duty or end points
 * outside its valid band, a channel that stands twice, an agreement without two duties. All problems of a file are
 * reported at once, each with line and column.
 */
package org.dutywright.sensor;
