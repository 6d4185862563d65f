// SPDX-License-Identifier: EPL-2.0
package org.dutywright.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.BenchmarkList;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.format.OutputFormat;
import org.openjdk.jmh.runner.format.OutputFormatFactory;
import org.openjdk.jmh.runner.options.CommandLineOptionException;
import org.openjdk.jmh.runner.options.CommandLineOptions;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.VerboseMode;

/** Runs the benchmarks of one class and writes their table. */
public final class Run {
    private static final String PRINT_ONLY = "--print";
    private static final String PACKAGE = "org.dutywright.benchmark.";

    private Run() {}

    /** Folder of the results, name of the class, options of JMH. */
    public static void main(String[] arguments) throws IOException, RunnerException, CommandLineOptionException {
        if (arguments.length < 2) {
            names().forEach(System.out::println);
            return;
        }
        String name = arguments[1];
        List<String> rest = new ArrayList<>(List.of(arguments).subList(2, arguments.length));
        boolean printOnly = rest.remove(PRINT_ONLY);
        Collection<RunResult> results = new Runner(options(name, rest)).run();
        String page = ResultPage.of(name, results);
        System.out.println(page);
        if (!printOnly) {
            Path file = Path.of(arguments[0], name + ".md");
            Files.createDirectories(file.toAbsolutePath().getParent());
            Files.writeString(file, page);
        }
    }

    /** Names of the classes that hold benchmarks. */
    static List<String> names() {
        OutputFormat silent = OutputFormatFactory.createFormatInstance(System.out, VerboseMode.SILENT);
        return BenchmarkList.defaultList().getAll(silent, List.of()).stream()
                .map(entry -> entry.getUserClassQName())
                .map(it -> it.substring(it.lastIndexOf('.') + 1))
                .distinct()
                .sorted()
                .toList();
    }

    /** Options for all benchmarks of one class of this package. */
    static Options options(String name, List<String> jmhOptions) throws CommandLineOptionException {
        return new OptionsBuilder()
                .parent(new CommandLineOptions(jmhOptions.toArray(String[]::new)))
                .include("^" + (PACKAGE + name).replace(".", "\\.") + "\\.")
                .addProfiler(CostProfiler.class)
                .verbosity(VerboseMode.NORMAL)
                .shouldFailOnError(true)
                .build();
    }
}
