// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import aQute.bnd.annotation.spi.ServiceConsumer;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.ServiceConfigurationError;
import java.util.ServiceLoader;
import java.util.Set;

/**
 * The readers that are installed as Java services.
 *
 * @param readers those that can be used, in the order found
 * @param problems why others cannot, a sentence each
 */
@ServiceConsumer(CaptureReader.class)
public record InstalledReaders(List<CaptureReader> readers, List<String> problems) {

    /** Copies its arguments. */
    public InstalledReaders {
        readers = List.copyOf(readers);
        problems = List.copyOf(problems);
    }

    /** Looks for them; a reader that cannot be loaded, or whose id is taken, becomes a problem. */
    public static InstalledReaders find() {
        List<CaptureReader> readers = new ArrayList<>();
        List<String> problems = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        Iterator<CaptureReader> found = ServiceLoader.load(CaptureReader.class, InstalledReaders.class.getClassLoader())
                .iterator();
        while (true) {
            try {
                if (!found.hasNext()) {
                    return new InstalledReaders(readers, problems);
                }
                CaptureReader reader = found.next();
                if (readers.stream().anyMatch(known -> known.getClass() == reader.getClass())) {
                    // inside of OSGi, one of our own bundle is found both there and across bundles
                    continue;
                }
                if (ids.add(reader.id())) {
                    readers.add(reader);
                } else {
                    problems.add("reader " + reader.getClass().getName() + " is refused: the id " + reader.id()
                            + " is taken");
                }
            } catch (ServiceConfigurationError e) {
                problems.add("reader is refused: " + e.getMessage());
            }
        }
    }
}
