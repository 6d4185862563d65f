// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report.internal;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter.Indenter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Statistic;
import org.dutywright.pulse.Uncertain;

/**
 * Writes indented JSON as a stream, with the rules for numbers in one place: what does not exist is {@code null},
 * and a number that is not finite never reaches the file.
 */
public final class JsonWriter implements AutoCloseable {
    /** Body of an object or an array. */
    @FunctionalInterface
    public interface Body {
        /** Writes the members. */
        void write() throws IOException;
    }

    private static final JsonFactory FACTORY =
            JsonFactory.builder().disable(StreamWriteFeature.AUTO_CLOSE_TARGET).build();

    private static final Indenter LINES = new DefaultIndenter("  ", "\n");
    private static final Separators SEPARATORS = Separators.createDefaultInstance()
            .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
            .withObjectEmptySeparator("")
            .withArrayEmptySeparator("");

    private final JsonGenerator json;
    private final DefaultPrettyPrinter layout;

    private JsonWriter(JsonGenerator json, DefaultPrettyPrinter layout) {
        this.json = json;
        this.layout = layout;
    }

    /** Starts writing UTF-8 with line feeds; closing the writer leaves the stream open. */
    public static JsonWriter to(OutputStream out) throws IOException {
        DefaultPrettyPrinter layout = new DefaultPrettyPrinter(SEPARATORS);
        layout.indentArraysWith(LINES);
        layout.indentObjectsWith(LINES);
        JsonGenerator generator = FACTORY.createGenerator(out);
        generator.setPrettyPrinter(layout);
        return new JsonWriter(generator, layout);
    }

    /** A nameless object: the document itself or an element of an array. */
    public void object(Body body) throws IOException {
        json.writeStartObject();
        body.write();
        json.writeEndObject();
    }

    /** A member that is an object. */
    public void object(String name, Body body) throws IOException {
        json.writeFieldName(name);
        object(body);
    }

    /** A nameless object on one line, for what belongs together; of objects it holds only a budget. */
    public void row(Body body) throws IOException {
        layout.indentObjectsWith(DefaultPrettyPrinter.FixedSpaceIndenter.instance);
        object(body);
        layout.indentObjectsWith(LINES);
    }

    /** A member that is an object on one line. */
    public void row(String name, Body body) throws IOException {
        json.writeFieldName(name);
        row(body);
    }

    /** A member that is an array. */
    public void array(String name, Body body) throws IOException {
        json.writeArrayFieldStart(name);
        body.write();
        json.writeEndArray();
    }

    /** A member that is an array of strings. */
    public void texts(String name, List<String> values) throws IOException {
        array(name, () -> {
            for (String value : values) {
                json.writeString(value);
            }
        });
    }

    /** A member that is a string. */
    public void text(String name, String value) throws IOException {
        json.writeStringField(name, value);
    }

    /** A member that is a string or {@code null}. */
    public void text(String name, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            text(name, value.get());
        } else {
            absent(name);
        }
    }

    /** A member that is a truth value. */
    public void truth(String name, boolean value) throws IOException {
        json.writeBooleanField(name, value);
    }

    /** A member that is a whole number. */
    public void count(String name, long value) throws IOException {
        json.writeNumberField(name, value);
    }

    /** A member that is {@code null}. */
    public void absent(String name) throws IOException {
        json.writeNullField(name);
    }

    /**
     * A member that is a number.
     *
     * @throws IllegalStateException if it is not finite: whoever computed it had to say that it is absent
     */
    public void number(String name, double value) throws IOException {
        json.writeNumberField(name, finite(name, value));
    }

    /** A member that is a number or {@code null}. */
    public void number(String name, OptionalDouble value) throws IOException {
        if (value.isPresent()) {
            number(name, value.getAsDouble());
        } else {
            absent(name);
        }
    }

    /** A member that holds a value, its standard uncertainty and its 95 % half-width, each {@code null} if absent. */
    public void uncertain(String name, Optional<Uncertain> value) throws IOException {
        row(name, () -> uncertainMembers(value));
    }

    /** The members of {@link #uncertain}, into the object that is open. */
    public void uncertainMembers(Optional<Uncertain> value) throws IOException {
        number("value", value.map(Uncertain::value));
        number("u", value.map(Uncertain::u));
        number("u95", value.map(Uncertain::u95));
        budget(value.map(Uncertain::budget));
    }

    /** A member that holds the six fields of a statistic, each {@code null} if it is absent. */
    public void statistic(String name, Optional<Statistic> value) throws IOException {
        row(name, () -> statisticMembers(value));
    }

    /** The members of {@link #statistic}, into the object that is open. */
    public void statisticMembers(Optional<Statistic> value) throws IOException {
        number("mean", value.map(Statistic::mean));
        number("min", value.map(Statistic::min));
        number("max", value.map(Statistic::max));
        number("sd", value.map(Statistic::sd));
        number("u", value.map(Statistic::u));
        number("u95", value.map(Statistic::u95));
        budget(value.map(Statistic::budget));
    }

    /** What an uncertainty is made of, into the row that is open; nothing where only its number is known. */
    public void budget(Optional<Budget> budget) throws IOException {
        budget("budget", budget);
    }

    /** The same under a name of its own, where one row holds more than one value. */
    public void budget(String name, Optional<Budget> budget) throws IOException {
        List<Budget.Component> components = budget.map(Budget::components).orElse(List.of());
        if (components.isEmpty()) {
            return;
        }
        layout.indentArraysWith(DefaultPrettyPrinter.FixedSpaceIndenter.instance);
        array(name, () -> {
            for (Budget.Component component : components) {
                object(() -> component(component));
            }
        });
        layout.indentArraysWith(LINES);
    }

    private void component(Budget.Component component) throws IOException {
        text("name", component.name());
        text("type", component.evaluation().name());
        text("distribution", component.shape().word());
        number("u", component.u());
        double degrees = component.degreesOfFreedom();
        number("degreesOfFreedom", Double.isInfinite(degrees) ? OptionalDouble.empty() : OptionalDouble.of(degrees));
    }

    /** A member that is a number or {@code null}. */
    public void number(String name, Optional<Double> value) throws IOException {
        if (value.isPresent()) {
            number(name, value.get().doubleValue());
        } else {
            absent(name);
        }
    }

    private static double finite(String name, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalStateException(name + " is " + value + " where a number or its absence belongs");
        }
        return value;
    }

    /** Ends the document with a line feed and flushes it. */
    @Override
    public void close() throws IOException {
        json.writeRaw('\n');
        json.close();
    }
}
