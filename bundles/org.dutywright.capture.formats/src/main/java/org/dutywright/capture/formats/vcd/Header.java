// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.vcd;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.dutywright.capture.UnreadableException;

/**
 * The declarations of a dump.
 *
 * @param signals in order, each identifier once
 * @param tickDivisor ticks of {@code tickMultiple} to a second
 * @param tickMultiple units of a tick
 * @param leftOut names of variables that cannot be numbers
 */
record Header(List<Signal> signals, double tickDivisor, int tickMultiple, List<String> leftOut) {
    private static final Pattern TIMESCALE = Pattern.compile("(1|10|100)(s|ms|us|ns|ps|fs)");
    private static final Map<String, Double> DIVISORS =
            Map.of("s", 1.0, "ms", 1e3, "us", 1e6, "ns", 1e9, "ps", 1e12, "fs", 1e15);
    private static final int MOST_VARIABLES = 100_000;
    private static final int MOST_SCOPES = 1000;
    private static final int LONGEST_NAME = 200;
    private static final int MOST_BITS = 53;

    /**
     * A signal.
     *
     * @param code that stands for it
     * @param path its name with its scopes
     * @param name its own name
     * @param real whether its values are real
     */
    record Signal(String code, String path, String name, boolean real) {}

    double seconds(long ticks) {
        return (double) ticks * tickMultiple / tickDivisor;
    }

    /** Reads all declarations. */
    static Header read(Tokens tokens) throws UnreadableException, IOException {
        return new Reading(tokens).read();
    }

    /** The names of the channels: short where that is enough. */
    List<String> names() {
        Map<String, Long> counts = signals.stream().collect(Collectors.groupingBy(Signal::name, Collectors.counting()));
        return signals.stream()
                .map(signal -> counts.get(signal.name()) == 1 ? signal.name() : signal.path())
                .toList();
    }

    private static final class Reading {
        private final Tokens tokens;
        private final Deque<String> scopes = new ArrayDeque<>();
        private final List<Signal> signals = new ArrayList<>();
        private final Set<String> codes = new HashSet<>();
        private final List<String> leftOut = new ArrayList<>();
        private Optional<Matcher> timescale = Optional.empty();
        private int variables;

        Reading(Tokens tokens) {
            this.tokens = tokens;
        }

        Header read() throws UnreadableException, IOException {
            while (true) {
                String word = tokens.word("the declarations");
                switch (word) {
                    case "$enddefinitions" -> {
                        tokens.skipToEnd(word);
                        return header();
                    }
                    case "$timescale" -> timescale();
                    case "$scope" -> scope();
                    case "$upscope" -> {
                        scopes.pollLast();
                        tokens.skipToEnd(word);
                    }
                    case "$var" -> variable();
                    default -> {
                        if (!word.startsWith("$")) {
                            throw tokens.broken("'" + quote(word) + "' stands where a declaration should start");
                        }
                        tokens.skipToEnd(quote(word));
                    }
                }
            }
        }

        private Header header() throws UnreadableException {
            if (signals.isEmpty()) {
                throw tokens.broken("no signal is declared");
            }
            Matcher scale = timescale.orElseThrow(() -> tokens.broken("no unit of time is declared"));
            return new Header(
                    List.copyOf(signals),
                    DIVISORS.get(scale.group(2)),
                    Integer.parseInt(scale.group(1)),
                    List.copyOf(leftOut));
        }

        private void timescale() throws UnreadableException, IOException {
            String text = "";
            String word = tokens.word("$timescale");
            while (!word.equals("$end")) {
                text = text.length() < LONGEST_NAME ? text + word : text;
                word = tokens.word("$timescale");
            }
            Matcher matcher = TIMESCALE.matcher(text);
            if (!matcher.matches()) {
                throw tokens.broken("'" + quote(text) + "' is no unit of time such as 1 us");
            }
            timescale = Optional.of(matcher);
        }

        private void scope() throws UnreadableException, IOException {
            tokens.word("$scope");
            scopes.addLast(quote(tokens.word("$scope")));
            if (scopes.size() > MOST_SCOPES) {
                throw tokens.broken("more than " + MOST_SCOPES + " scopes lie in each other");
            }
            tokens.skipToEnd("$scope");
        }

        private void variable() throws UnreadableException, IOException {
            if (++variables > MOST_VARIABLES) {
                throw tokens.broken("more than " + MOST_VARIABLES + " variables are declared");
            }
            String type = tokens.word("$var");
            String size = tokens.word("$var");
            String code = tokens.word("$var");
            String name = quote(tokens.word("$var"));
            tokens.skipToEnd("$var");
            boolean real = type.startsWith("real");
            if (!size.matches("\\d{1,6}") || code.equals("$end") || name.equals("$end")) {
                throw tokens.broken("a variable is declared without type, size, identifier or name");
            }
            if (!codes.add(code)) {
                return;
            }
            String path = path(name);
            if (!real && Integer.parseInt(size) > MOST_BITS) {
                leftOut.add(path + ": more than " + MOST_BITS + " bits");
            } else if (type.equals("event") || type.equals("string")) {
                leftOut.add(path + ": has no value");
            } else {
                signals.add(new Signal(code, path, name, real));
            }
        }

        private String path(String name) {
            String path = String.join(".", scopes) + (scopes.isEmpty() ? "" : ".") + name;
            return path.length() <= LONGEST_NAME ? path : path.substring(path.length() - LONGEST_NAME);
        }
    }

    /** A word of the file for a name or a message. */
    static String quote(String word) {
        String line = word.replaceAll("\\p{Cntrl}", " ");
        return line.length() <= LONGEST_NAME ? line : line.substring(0, LONGEST_NAME) + "…";
    }
}
