// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.parse;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.dutywright.sensor.Sensor;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.Expectation;
import org.dutywright.simulation.Fault;
import org.dutywright.simulation.Profile;
import org.dutywright.simulation.Recording;
import org.dutywright.simulation.Scenario;
import org.dutywright.simulation.Supply;
import org.dutywright.text.MapReader;
import org.dutywright.text.Problems;
import org.dutywright.text.ProblemsException;
import org.dutywright.text.ScalarParser;
import org.dutywright.text.TextNode;
import org.dutywright.text.TextTree;

/** Reads scenario texts, reporting all their problems at once. */
public final class ScenarioText {

    private static final long MAX_SEED = 1_000_000_000_000_000L;

    private static final List<String> VERDICTS = List.of("conforms", "does-not-conform", "inconclusive");

    private static final List<String> PLACES = List.of(
            "sensor",
            "signal-wire",
            "supply",
            "ground",
            "module-input",
            "linkage",
            "interference",
            "recording",
            "none");

    private final MapReader map;
    private final Problems problems;
    private final Function<String, Optional<Sensor>> sensors;

    private ScenarioText(MapReader map, Problems problems, Function<String, Optional<Sensor>> sensors) {
        this.map = map;
        this.problems = problems;
        this.sensors = sensors;
    }

    /**
     * Parses a text.
     *
     * @param fileName the file as the user named it, for messages
     * @param sensors finds a sensor of the catalogue
     * @throws ProblemsException with all problems of the text
     */
    public static Scenario parse(String fileName, String content, Function<String, Optional<Sensor>> sensors)
            throws ProblemsException {
        TextNode root = TextTree.parse(fileName, content);
        Problems problems = new Problems(fileName);
        MapReader map = MapReader.of(root, problems, "a scenario");
        Scenario scenario = new ScenarioText(map, problems, sensors).read();
        problems.throwIfAny();
        return scenario;
    }

    private Scenario read() {
        map.required("schema", ScalarParser.word(List.of(Scenario.SCHEMA)));
        String id = map.required("id", Scalars.id()).orElse("");
        String title = map.required("title", ScalarParser.text()).orElse("");
        String note = map.optional("note", ScalarParser.text()).orElse("");
        String sensorId = map.required("sensor", Scalars.id()).orElse("");
        long seed = map.required("seed", ScalarParser.whole(0, MAX_SEED)).orElse(0L);
        Optional<MapReader> recordingMap = map.child("recording");
        if (recordingMap.isEmpty()) {
            problems.add(map.mark(), "a scenario needs the key 'recording'");
        }
        Optional<Recording> recording = recordingMap.flatMap(child -> RecordingText.read(child, problems));
        double noise = recordingMap.map(RecordingText::noiseVolts).orElse(0.0);
        recordingMap.ifPresent(MapReader::finish);
        Profile travel = map.node("travel")
                .map(node -> ProfileText.travel(node, problems))
                .orElse(Profile.constant(0));
        List<ChannelModel> channels = channels(recording, noise, sensors.apply(sensorId));
        Optional<Supply> supply = map.child("supply").map(child -> supply(child, channels));
        List<Fault> faults = FaultText.read(map.children("faults", "a fault"), problems, recording, channels);
        Optional<String> position = map.optional("knownPosition", ScalarParser.word(List.of("released", "pressed")));
        Optional<Expectation> expectation = map.child("expect").map(this::expectation);
        map.finish();
        // Stands in until the problems are thrown.
        Recording known = recording.orElseGet(
                () -> new Recording(1, 0, 1, Optional.empty(), List.of(), Recording.Format.standard()));
        return new Scenario(
                id, title, note, sensorId, seed, known, supply, travel, channels, faults, position, expectation);
    }

    private List<ChannelModel> channels(Optional<Recording> recording, double noise, Optional<Sensor> sensor) {
        List<ChannelModel> channels = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (MapReader child : map.children("channels", "a channel")) {
            Optional<ChannelModel> channel = ChannelText.read(child, problems, recording, noise, sensor);
            if (channel.isPresent() && !names.add(channel.get().name())) {
                child.problemAt("name", "a channel named '" + channel.get().name() + "' stands above");
            } else {
                channel.ifPresent(channels::add);
            }
        }
        if (!map.has("channels") || (channels.isEmpty() && problems.isEmpty())) {
            map.problemAt("channels", "a scenario needs the key 'channels' with at least one channel");
        }
        return channels;
    }

    private Supply supply(MapReader child, List<ChannelModel> channels) {
        double volts =
                child.required("volts", Scalars.positive(Scalars.volts())).orElse(1.0);
        Optional<String> recordedAs = child.optional("recordedAs", Scalars.channelName());
        double noise =
                child.optional("noise", Scalars.notNegative(Scalars.volts())).orElse(0.0);
        child.finish();
        if (recordedAs.isPresent()
                && channels.stream().anyMatch(channel -> channel.name().equals(recordedAs.get()))) {
            child.problemAt("recordedAs", "a channel has the name '" + recordedAs.get() + "' already");
        }
        return new Supply(volts, recordedAs, noise);
    }

    private Expectation expectation(MapReader child) {
        String verdict = child.required("verdict", ScalarParser.word(VERDICTS)).orElse("");
        List<String> because = child.scalars("because", ScalarParser.text());
        Optional<String> suspect = child.optional("suspect", ScalarParser.word(PLACES));
        child.finish();
        return new Expectation(verdict, because, suspect);
    }
}
