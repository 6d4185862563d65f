// SPDX-License-Identifier: EPL-2.0
package org.dutywright.sensor;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.dutywright.text.ProblemsException;
import org.junit.jupiter.api.Test;

class DocumentedTextTest {
    private static final Path DOCUMENT =
            Path.of("src", "main", "java", "org", "dutywright", "sensor", "package-info.java");

    @Test
    void theTextOfThePackageDescriptionHasNoProblem() throws IOException, ProblemsException {
        String text = Files.readString(DOCUMENT)
                .lines()
                .dropWhile(line -> !line.contains("<pre>{@code"))
                .skip(1)
                .takeWhile(line -> !line.contains("}</pre>"))
                .map(line -> line.substring(" * ".length()))
                .collect(Collectors.joining("\n"));
        Sensor sensor = SensorText.parse(DOCUMENT.toString(), text);
        assertThat(sensor.id()).isEqualTo("twin-pedal-200");
        assertThat(sensor.channels()).hasSize(2);
        assertThat(sensor.events()).containsOnlyKeys("runt", "level-shift");
    }
}
