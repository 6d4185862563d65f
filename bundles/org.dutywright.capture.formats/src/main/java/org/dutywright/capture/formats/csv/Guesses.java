// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.dutywright.capture.TableSettings;

/** What was decided about the layout of a table: in words, and as settings that decide the same. */
final class Guesses {
    private static final String AS_GIVEN = ", as given";

    private Guesses() {}

    /** In words, in the order in which it was decided. */
    static Map<String, String> of(HeadText head, Layout layout, TableSettings said) {
        Map<String, String> guessed = new LinkedHashMap<>();
        guessed.put("encoding", head.charset().name() + given(said.encoding().isPresent()));
        guessed.put(
                "delimiter", layout.delimiter().word() + given(said.delimiter().isPresent()));
        guessed.put(
                "decimal mark",
                (layout.decimalComma() ? "comma" : "point")
                        + given(said.decimalComma().isPresent()));
        guessed.put("preamble lines", Long.toString(layout.preambleLines()));
        guessed.put(
                "header line", line(layout.header()) + given(said.headerLine().isPresent()));
        guessed.put("unit line", line(layout.units()) + given(said.unitsLine().isPresent()));
        said.firstLine().ifPresent(line -> guessed.put("first line of values", line + AS_GIVEN));
        return guessed;
    }

    private static String given(boolean given) {
        return given ? AS_GIVEN : "";
    }

    private static String line(Optional<HeadRow> row) {
        return row.map(it -> Long.toString(it.line())).orElse("none");
    }

    /** As settings; the first line of values where no line of headings or units tells it. */
    static TableSettings asRead(HeadText head, Layout layout, TableSettings said) {
        boolean headed = layout.header().isPresent() || layout.units().isPresent();
        return new TableSettings(
                Optional.of(head.charset()),
                Optional.of(layout.delimiter()),
                Optional.of(layout.decimalComma()),
                number(layout.header()),
                number(layout.units()),
                headed ? said.firstLine() : OptionalLong.of(layout.firstDataLine()));
    }

    private static OptionalLong number(Optional<HeadRow> row) {
        return OptionalLong.of(row.map(HeadRow::line).orElse(0L));
    }
}
