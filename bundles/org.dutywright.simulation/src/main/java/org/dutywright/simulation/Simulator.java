// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.CannotCreateException;
import org.dutywright.capture.Capture;
import org.dutywright.capture.EvenTimeBase;
import org.dutywright.capture.OutputFile;
import org.dutywright.capture.Progress;
import org.dutywright.simulation.internal.signal.SimulatedSamples;
import org.dutywright.simulation.internal.write.CsvWriter;
import org.dutywright.simulation.internal.write.TruthJson;

/** Makes captures from scenarios. Equal scenarios give equal bytes; memory does not grow with the duration. */
public final class Simulator {

    private Simulator() {}

    /**
     * The capture of a scenario without a file: its samples are made when they are read, cheaply forwards, from the
     * start again when read backwards.
     */
    public static Capture capture(Scenario scenario) {
        SimulatedSamples samples = new SimulatedSamples(scenario);
        return new Capture(
                List.of(),
                samples.channels(),
                EvenTimeBase.of(scenario.recording().sampleRateHz(), samples.segments()),
                samples,
                Map.of());
    }

    /** The samples of a scenario; see {@link #capture}. */
    public static org.dutywright.capture.Samples samples(Scenario scenario) {
        return new SimulatedSamples(scenario);
    }

    /** Where {@link #write} puts the truth about a capture: its name with {@code .truth.json} behind it. */
    public static Path truthFile(Path csv) {
        return csv.resolveSibling(csv.getFileName() + ".truth.json");
    }

    /**
     * Writes a capture and the truth beside it ({@link #truthFile}). Both appear whole or not at all.
     *
     * @param csv the capture; replaced if it exists
     * @param progress gets one task in samples of a channel
     * @throws CannotCreateException if a file cannot be created or written
     * @throws CancelledException if the user asked to stop; nothing is left behind
     */
    public static void write(Scenario scenario, Path csv, Progress progress) throws IOException {
        OutputFile.write(csv, stream -> {
            SimulatedSamples samples = new SimulatedSamples(scenario);
            CsvWriter.write(scenario, samples, stream, progress);
            // Inside, so that a truth that cannot be written leaves no capture without one.
            OutputFile.write(truthFile(csv), truth -> TruthJson.write(scenario, samples, truth));
        });
    }
}
