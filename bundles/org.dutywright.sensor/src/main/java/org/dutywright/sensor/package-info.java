// SPDX-License-Identifier: EPL-2.0
/**
 * The sensor catalogue: model, text and validation. A sensor text is YAML, one sensor a file:
 *
 * <pre>{@code
 * schema: dutywright.sensor/1
 * id: twin-pedal-200              # letters, digits, dots and dashes
 * title: Twin-channel pedal position sensor
 * source: {document: "Where the numbers come from", revision: "1", date: 2026-11-25}
 * quantity: {name: pedal travel, unit: "%", released: 0, pressed: 100}
 * supply: {min: 9 V, max: 32 V}
 * channels:
 *   - name: signal1
 *     active: high                # the level whose share of the period is the duty
 *     frequency: {min: 180 Hz, max: 220 Hz}
 *     lowLevel: {max: 1.0 V}
 *     highLevel: {min: 75 % of supply, max: 16.0 V}
 *     input: {rising: 3.5 V, falling: 1.5 V}
 *     duty: {released: 10 %, pressed: 45 %, tolerance: 2 %, valid: {min: 5 %, max: 95 %}}
 *     transition: {max: 100 us}
 * agreement: {tolerance: 4 %, moving: 8 %, movingAbove: 50 %/s, confirmation: 200 ms}
 * events: {runt: {max: 0}, level-shift: ignore}
 * decision: {rule: three-way, coverage: 2}
 * }</pre>
 *
 * <p>{@code schema}, {@code id} and {@code channels} with their {@code name} must be there; every limit may be absent
 * and is then not judged. A value with a dimension is a number, a space and a unit.
 */
package org.dutywright.sensor;
