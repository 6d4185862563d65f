// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import aQute.bnd.annotation.spi.ServiceConsumer;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.ServiceConfigurationError;
import java.util.ServiceLoader;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.internal.CaptureRun;
import org.dutywright.pulse.internal.MeasurementRunner;

/**
 * Measures captures: state levels, transitions, cycles, events of every channel, and what the measurements make of them.
 * Reads each channel five or six times a block at a time; memory does not grow with the length of the capture.
 * Stateless, safe for several threads.
 */
@ServiceConsumer(Measurement.class)
public final class CaptureMeasurer {
    /** Half-width of the interval in which the clock of an ordinary recorder lies, in parts per million. */
    public static final double DEFAULT_TIME_BASE_PPM = 50;

    private final List<Measurement> measurements;
    private final List<String> refused;
    private final MeasurementRunner runner;
    private final int threads;

    /**
     * A measurer with chosen measurements.
     *
     * @param measurements in the order in which their results are wanted
     * @throws IllegalArgumentException if two of them, or two of their results, have the same id
     */
    public CaptureMeasurer(List<Measurement> measurements) {
        this(measurements, List.of(), Runtime.getRuntime().availableProcessors());
    }

    private CaptureMeasurer(List<Measurement> measurements, List<String> refused, int threads) {
        this.threads = threads;
        this.measurements = List.copyOf(measurements);
        this.refused = List.copyOf(refused);
        runner = new MeasurementRunner(measurements);
    }

    /**
     * A measurer with every measurement installed as a service. One that cannot be loaded, or whose ids another one has
     * already, is left out and named in {@link #refused}: one bad extension stops nothing.
     */
    public static CaptureMeasurer withInstalled() {
        List<Measurement> found = new ArrayList<>();
        List<String> refused = new ArrayList<>();
        Iterator<Measurement> installed = ServiceLoader.load(Measurement.class, Measurement.class.getClassLoader())
                .iterator();
        boolean more = true;
        while (more) {
            try {
                more = installed.hasNext();
                if (more) {
                    List<Measurement> longer = new ArrayList<>(found);
                    longer.add(installed.next());
                    new MeasurementRunner(longer);
                    found = longer;
                }
            } catch (ServiceConfigurationError | RuntimeException e) {
                refused.add(e.getMessage());
            }
        }
        return new CaptureMeasurer(found, refused, Runtime.getRuntime().availableProcessors());
    }

    /**
     * The same measurer on a number of threads; else it uses one for each processor, at most one a channel. Results do not
     * depend on it.
     *
     * @param most channels that are worked on at once, 1 or more
     */
    public CaptureMeasurer withThreads(int most) {
        if (most < 1) {
            throw new IllegalArgumentException("threads: " + most);
        }
        return new CaptureMeasurer(measurements, refused, most);
    }

    /** The measurements in use. */
    public List<Measurement> measurements() {
        return measurements;
    }

    /** Installed measurements that were left out, each with the reason. */
    public List<String> refused() {
        return refused;
    }

    /**
     * Measures a capture, the clock of its recorder as {@link RecorderSettings#TIME_BASE} says.
     *
     * @param plans what is known of the channels, by name; channels without a plan are looked at without prejudice
     * @param settings the numbers that steer measuring
     * @param progress gets one task in samples read; only the calling thread talks to it
     * @throws IOException if the samples cannot be read or the temporary files cannot be written
     * @throws org.dutywright.capture.CancelledException if the user asked to stop; nothing is left behind
     */
    public CaptureMeasurement measure(
            Capture capture, Map<String, ChannelPlan> plans, PulseSettings settings, Progress progress)
            throws IOException {
        return measure(capture, plans, settings, settings.get(RecorderSettings.TIME_BASE), progress);
    }

    /**
     * Measures a capture with a clock of its own; the settings of the result name it.
     *
     * @param plans what is known of the channels, by name; channels without a plan are looked at without prejudice
     * @param settings the numbers that steer measuring
     * @param timeBasePpm half-width of the interval in which the relative error of the recorder's clock lies, in parts
     *     per million
     * @param progress gets one task in samples read; only the calling thread talks to it
     * @throws IOException if the samples cannot be read or the temporary files cannot be written
     * @throws org.dutywright.capture.CancelledException if the user asked to stop; nothing is left behind
     */
    public CaptureMeasurement measure(
            Capture capture,
            Map<String, ChannelPlan> plans,
            PulseSettings settings,
            double timeBasePpm,
            Progress progress)
            throws IOException {
        // a clock error anywhere in the interval is equally likely: rectangular, JCGM 100 4.3.7
        double relative = timeBasePpm * 1e-6 / Math.sqrt(3);
        PulseSettings used = settings.with(RecorderSettings.TIME_BASE, timeBasePpm);
        return CaptureRun.run(capture, plans, used, relative, runner, threads, progress);
    }
}
