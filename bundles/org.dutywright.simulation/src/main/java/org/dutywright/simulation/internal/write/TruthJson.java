// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.write;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.DutyLaw;
import org.dutywright.simulation.Expectation;
import org.dutywright.simulation.Fault;
import org.dutywright.simulation.Recording;
import org.dutywright.simulation.Scenario;
import org.dutywright.simulation.internal.signal.Happening;
import org.dutywright.simulation.internal.signal.SignalTruth;
import org.dutywright.simulation.internal.signal.SimulatedSamples;

/**
 * Writes what is true about a simulated capture, schema {@code dutywright.truth/1}. Numbers are in base units, as in the
 * JSON of {@code measure}. A fault's {@code event} is the kind of event that measuring should name at its place, null
 * where it is none's or depends on limits. Levels are those of the healthy channel plus what faults add that hold for
 * the whole recording. Cycles, frequency and duty are those of the carrier: whole cycles inside
 * the recording, whether or not a fault hides their pulses.
 */
public final class TruthJson {

    private static final String SCHEMA = "dutywright.truth/1";

    private final Scenario scenario;
    private final JsonGenerator json;

    private TruthJson(Scenario scenario, JsonGenerator json) {
        this.scenario = scenario;
        this.json = json;
    }

    /**
     * Writes the truth.
     *
     * @param samples all of them were read; they are finished by this call
     */
    public static void write(Scenario scenario, SimulatedSamples samples, OutputStream stream) throws IOException {
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        // The caller closes the stream.
        JsonFactory factory = JsonFactory.builder()
                .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
                .build();
        try (JsonGenerator json = factory.createGenerator(stream)) {
            json.setPrettyPrinter(
                    new DefaultPrettyPrinter().withObjectIndenter(lines).withArrayIndenter(lines));
            new TruthJson(scenario, json).write(samples);
            json.writeRaw('\n');
        }
    }

    private void write(SimulatedSamples samples) throws IOException {
        List<Happening> happenings = new ArrayList<>();
        json.writeStartObject();
        json.writeStringField("schema", SCHEMA);
        json.writeStringField("scenario", scenario.id());
        json.writeStringField("sensor", scenario.sensor());
        json.writeNumberField("seed", scenario.seed());
        writeRecording(samples.sampleCount());
        number(
                "supplyVolts",
                scenario.supply()
                        .map(supply -> OptionalDouble.of(supply.volts()))
                        .orElse(OptionalDouble.empty()));
        json.writeArrayFieldStart("channels");
        for (int i = 0; i < scenario.channels().size(); i++) {
            SignalTruth truth = samples.finish(i);
            happenings.addAll(truth.happenings());
            writeChannel(scenario.channels().get(i), truth);
        }
        json.writeEndArray();
        writeFaults(happenings);
        writeExpectation();
        json.writeEndObject();
    }

    private void writeRecording(long sampleCount) throws IOException {
        Recording recording = scenario.recording();
        json.writeObjectFieldStart("recording");
        json.writeNumberField("sampleRateHz", recording.sampleRateHz());
        json.writeNumberField("startS", recording.startSeconds());
        json.writeNumberField("durationS", recording.durationSeconds());
        json.writeNumberField("samples", sampleCount);
        json.writeArrayFieldStart("pauses");
        for (Recording.Pause pause : recording.pauses()) {
            json.writeStartObject();
            json.writeNumberField("startS", pause.startSeconds());
            json.writeNumberField("endS", pause.endSeconds());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void writeChannel(ChannelModel channel, SignalTruth truth) throws IOException {
        json.writeStartObject();
        json.writeStringField("name", channel.name());
        json.writeStringField("activeLevel", channel.activeHigh() ? "high" : "low");
        json.writeNumberField("lowLevel", channel.lowVolts() + lastingShift(channel, false));
        json.writeNumberField("highLevel", channel.highVolts() + lastingShift(channel, true));
        json.writeNumberField("carrierHz", channel.carrierHz());
        json.writeNumberField("cycles", truth.cycles());
        number("frequencyHz", truth.frequencyHz());
        json.writeObjectFieldStart("dutyPercent");
        number("mean", truth.dutyMeanPercent());
        number("min", truth.dutyMinPercent());
        number("max", truth.dutyMaxPercent());
        json.writeEndObject();
        boolean byTravel = channel.duty() instanceof DutyLaw.EndPoints;
        number("dutyReleasedPercent", byTravel ? dutyAtTravel(channel, 0) : OptionalDouble.empty());
        number("dutyPressedPercent", byTravel ? dutyAtTravel(channel, 100) : OptionalDouble.empty());
        json.writeEndObject();
    }

    private double lastingShift(ChannelModel channel, boolean high) {
        Recording recording = scenario.recording();
        double volts = 0;
        for (Fault fault : scenario.faultsOf(channel.name())) {
            if (fault.startSeconds() <= recording.startSeconds() && fault.endSeconds() >= recording.endSeconds()) {
                volts += switch (fault) {
                    case Fault.GroundLift lift -> high && !lift.liftsHigh() ? 0 : lift.volts();
                    case Fault.LevelShift shift -> high ? shift.highVolts() : shift.lowVolts();
                    default -> 0;
                };
            }
        }
        return volts;
    }

    private OptionalDouble dutyAtTravel(ChannelModel channel, double travelPercent) {
        return OptionalDouble.of(channel.duty().dutyPercent(scenario.recording().startSeconds(), travelPercent));
    }

    private void writeFaults(List<Happening> happenings) throws IOException {
        json.writeArrayFieldStart("faults");
        for (Happening happening : happenings) {
            json.writeStartObject();
            json.writeStringField("kind", happening.fault().kind());
            json.writeStringField("channel", happening.fault().channel());
            json.writeNumberField("startS", happening.startSeconds());
            json.writeNumberField("endS", happening.endSeconds());
            json.writeStringField("event", happening.event().orElse(null));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void writeExpectation() throws IOException {
        if (scenario.expectation().isEmpty()) {
            json.writeNullField("expect");
            return;
        }
        Expectation expectation = scenario.expectation().get();
        json.writeObjectFieldStart("expect");
        json.writeStringField("verdict", expectation.verdict());
        json.writeArrayFieldStart("because");
        for (String item : expectation.because()) {
            json.writeString(item);
        }
        json.writeEndArray();
        json.writeStringField("suspect", expectation.suspect().orElse(null));
        json.writeEndObject();
    }

    private void number(String name, OptionalDouble value) throws IOException {
        if (value.isPresent()) {
            json.writeNumberField(name, value.getAsDouble());
        } else {
            json.writeNullField(name);
        }
    }
}
