// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import java.util.Optional;

/**
 * The voltage that feeds the sensor.
 *
 * @param volts at the sensor, against the battery's negative pole
 * @param recordedAs name of the channel that recorded it at the sensor's plug, empty if none did
 * @param noiseVolts RMS of the white noise on that channel
 */
public record Supply(double volts, Optional<String> recordedAs, double noiseVolts) {}
