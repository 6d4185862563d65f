// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import java.util.List;
import java.util.Optional;
import org.dutywright.sensor.Catalogue;
import org.dutywright.simulation.internal.parse.ScenarioText;
import org.dutywright.text.ProblemsException;

/**
 * What is simulated: a sensor that moves, how it is recorded, and what is wrong with it.
 *
 * @param id short name
 * @param title one line for people
 * @param note what else there is to say, empty for nothing
 * @param sensor id of the sensor in the catalogue
 * @param seed everything random follows from it
 * @param recording how it is recorded and written
 * @param supply what feeds the sensor, empty if not stated
 * @param travel travel in percent over time
 * @param channels in the order of their columns
 * @param faults in the order of the text, each at one place of one channel
 * @param knownPosition "released" or "pressed" if the travel is known to stand there all the time
 * @param expectation what a check should come to, empty if not stated
 */
public record Scenario(
        String id,
        String title,
        String note,
        String sensor,
        long seed,
        Recording recording,
        Optional<Supply> supply,
        Profile travel,
        List<ChannelModel> channels,
        List<Fault> faults,
        Optional<String> knownPosition,
        Optional<Expectation> expectation) {

    /** Version of the scenario text. */
    public static final String SCHEMA = "dutywright.scenario/1";

    /** Copies its arguments. */
    public Scenario {
        channels = List.copyOf(channels);
        faults = List.copyOf(faults);
    }

    /**
     * Parses a scenario text; what it leaves out comes from the built-in sensors.
     *
     * @param fileName the file as the user named it, for messages
     * @throws ProblemsException with all problems of the text
     */
    public static Scenario parse(String fileName, String content) throws ProblemsException {
        return parse(fileName, content, Catalogue.builtIn());
    }

    /**
     * Parses a scenario text.
     *
     * @param fileName the file as the user named it, for messages
     * @param catalogue has the sensor whose active levels and duties stand where the text leaves them out
     * @throws ProblemsException with all problems of the text
     */
    public static Scenario parse(String fileName, String content, Catalogue catalogue) throws ProblemsException {
        return ScenarioText.parse(fileName, content, id -> catalogue.find(id).map(Catalogue.Entry::sensor));
    }

    /** The faults of one channel, in the order of the text. */
    public List<Fault> faultsOf(String channel) {
        return faults.stream().filter(fault -> fault.channel().equals(channel)).toList();
    }
}
