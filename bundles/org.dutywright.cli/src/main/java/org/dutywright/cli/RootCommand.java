// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The program: its commands, and what it says where none is named. */
@Command(
        name = "dutywright",
        description = "Measures every cycle of pulse-width-modulated sensor signals and compares them with the"
                + " limits of a sensor catalogue.",
        synopsisSubcommandLabel = "COMMAND",
        footer = {
            "",
            "Exit status: 0 done, and for check: conforms; 1 does not conform; 2 inconclusive; 64 wrong usage;"
                    + " 65 unreadable data; 66 no such input; 70 internal error; 73 cannot create output;"
                    + " 130 cancelled."
        })
final class RootCommand implements Callable<Integer> {
    @Override
    public Integer call() {
        throw CommandFailure.usage("no command is given");
    }

    /** The whole command line, its commands talking through a session. */
    static CommandLine commandLine(Session session) {
        CommandLine root = new CommandLine(new RootCommand())
                .addSubcommand(new MeasureCommand(session))
                .addSubcommand(new CheckCommand(session))
                .addSubcommand(new ConvertCommand(session))
                .addSubcommand(new SimulateCommand(session))
                .addSubcommand(new CommandLine(new CatalogueCommand())
                        .addSubcommand(new CatalogueListCommand(session))
                        .addSubcommand(new CatalogueShowCommand(session))
                        .addSubcommand(new CatalogueValidateCommand(session)))
                .addSubcommand(new DemoCommand(session))
                .addSubcommand(new SettingsCommand(session))
                .addSubcommand(new PluginsCommand(session));
        configure(root);
        return root;
    }

    private static void configure(CommandLine command) {
        command.setExpandAtFiles(false);
        command.setUsageHelpWidth(100);
        command.getCommandSpec()
                .addOption(CommandLine.Model.OptionSpec.builder("--help")
                        .usageHelp(true)
                        .description("shows this text")
                        .type(boolean.class)
                        .build());
        command.getCommandSpec()
                .addOption(CommandLine.Model.OptionSpec.builder("--version")
                        .versionHelp(true)
                        .description("shows name and version")
                        .type(boolean.class)
                        .build());
        command.getCommandSpec().versionProvider(new Version());
        command.getSubcommands().values().forEach(RootCommand::configure);
    }
}
