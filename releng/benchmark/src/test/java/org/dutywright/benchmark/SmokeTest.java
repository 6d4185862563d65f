// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.VerboseMode;

/** Every benchmark runs once, on few samples and without a time that anybody looks at. */
class SmokeTest {
    static Stream<String> classes() {
        return Run.names().stream();
    }

    @ParameterizedTest
    @MethodSource("classes")
    void runs_and_makes_a_table(String name) throws Exception {
        Collection<RunResult> results = new Runner(new OptionsBuilder()
                        .parent(Run.options(name, List.of()))
                        .param("rows", "3000")
                        .param("samples", "100000")
                        .forks(0)
                        .warmupIterations(0)
                        .measurementIterations(1)
                        .verbosity(VerboseMode.SILENT)
                        .build())
                .run();

        assertThat(ResultPage.of(name, results).lines().filter(line -> line.startsWith("| ")))
                .hasSize(1 + results.size());
    }
}
