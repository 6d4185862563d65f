// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dutywright.capture.Delimiter;
import org.dutywright.capture.formats.SharedData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Rows against the files of csv-spectrum (../shared/data/csv, BSD-2-Clause): each has its expected cells as JSON. */
class CsvSpectrumTest {
    private static final Pattern JSON_TEXT = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"\\s*(:?)");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "comma_in_quotes",
                "empty",
                "empty_crlf",
                "escaped_quotes",
                "json",
                "location_coordinates",
                "newlines",
                "newlines_crlf",
                "quotes_and_newlines",
                "simple",
                "simple_crlf",
                "utf8"
            })
    void rowsHaveTheCellsThatTheirCompanionStates(String name) throws IOException {
        Optional<Path> data = SharedData.folder("csv");
        assumeTrue(data.isPresent(), "../shared/data/csv is absent: " + name + " is not checked");
        byte[] bytes = Files.readAllBytes(data.get().resolve(name + ".csv"));
        List<String> expected = expected(Files.readString(data.get().resolve(name + ".json")));
        assertThat(withoutKnownFaults(
                        cells(HeadText.of(bytes, true).orElseThrow().text())))
                .isEqualTo(withoutKnownFaults(expected));
    }

    @Test
    void lineBreaksInsideQuotesStayAsTheyAre() {
        assertThat(cells("a,b\r\n1,\"x\r\ny\"\r\n2,\"x\ny\"\r\n")).containsExactly("a=1", "b=x\r\ny", "a=2", "b=x\ny");
    }

    private static List<String> cells(String text) {
        List<HeadRow> rows = HeadRow.split(text, Delimiter.COMMA);
        List<String> cells = new ArrayList<>();
        for (HeadRow row : rows.subList(1, rows.size())) {
            for (int i = 0; i < row.width(); i++) {
                cells.add(rows.get(0).cell(i) + "=" + row.cell(i));
            }
        }
        return cells;
    }

    /**
     * In the collection as published, one telephone number differs between a file and its companion, and the line
     * breaks of newlines_crlf.csv are plain line feeds while its companion says CR LF.
     */
    private static List<String> withoutKnownFaults(List<String> cells) {
        return cells.stream()
                .filter(cell -> !cell.startsWith("Contact Phone Number="))
                .map(cell -> cell.replace("\r\n", "\n"))
                .toList();
    }

    // the companions are lists of flat objects of strings: pairs of a key and a text
    private static List<String> expected(String json) {
        List<String> pairs = new ArrayList<>();
        Matcher matcher = JSON_TEXT.matcher(json);
        String key = "";
        while (matcher.find()) {
            if (matcher.group(2).isEmpty()) {
                pairs.add(key + "=" + unescaped(matcher.group(1)).strip());
            } else {
                key = unescaped(matcher.group(1));
            }
        }
        return pairs;
    }

    private static String unescaped(String text) {
        return text.replace("\\r", "\r")
                .replace("\\n", "\n")
                .replace("\\\"", "\"")
                .replace("\\\\", "\\");
    }
}
