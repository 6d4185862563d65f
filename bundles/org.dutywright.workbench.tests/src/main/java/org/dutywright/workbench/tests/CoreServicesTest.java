// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.dutywright.capture.CaptureReader;
import org.dutywright.capture.InstalledReaders;
import org.dutywright.pulse.CaptureMeasurer;
import org.dutywright.pulse.Measurement;
import org.eclipse.core.runtime.Platform;
import org.junit.jupiter.api.Test;
import org.osgi.framework.Bundle;

/** Inside the framework every bundle has class paths of its own; the core's services are found across them all the same. */
final class CoreServicesTest {
    private static final String MEDIATOR = "org.apache.aries.spifly.dynamic.bundle";

    @Test
    void the_mediator_runs() {
        assertThat(Platform.getBundle(MEDIATOR).getState()).isEqualTo(Bundle.ACTIVE);
    }

    @Test
    void the_readers_of_both_bundles_that_have_some_are_found_once() {
        InstalledReaders installed = InstalledReaders.find();

        assertThat(installed.problems()).isEmpty();
        assertThat(installed.readers())
                .extracting(CaptureReader::id)
                .contains("arrow", "csv", "wav", "comtrade", "vcd", "numpy", "hdf5", "mat")
                .doesNotHaveDuplicates();
    }

    @Test
    void the_built_in_measurements_are_found() {
        CaptureMeasurer measurer = CaptureMeasurer.withInstalled();
        List<String> ids = measurer.measurements().stream().map(Measurement::id).toList();

        assertThat(measurer.refused()).isEmpty();
        assertThat(ids).contains("frequency", "period", "duty", "pulse-duration", "mean-voltage", "period-jitter");
    }
}
