// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine;

/** Name and version of the program, as the build wrote it. */
final class Version implements CommandLine.IVersionProvider {
    /** "Dutywright 0.1.0". */
    static String text() {
        Properties properties = new Properties();
        try (InputStream stream = Version.class.getResourceAsStream("version.properties")) {
            properties.load(stream);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return "Dutywright " + properties.getProperty("version").replace("-SNAPSHOT", "");
    }

    @Override
    public String[] getVersion() {
        return new String[] {text()};
    }
}
