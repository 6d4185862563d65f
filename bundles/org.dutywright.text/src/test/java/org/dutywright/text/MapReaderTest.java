// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MapReaderTest {
    private final Problems problems = new Problems("f");

    private MapReader reader(String text) throws ProblemsException {
        return MapReader.of(TextTree.parse("f", text), problems, "a thing");
    }

    private List<String> messages() {
        return problems.list().stream().map(Problem::toString).toList();
    }

    @Test
    void allProblemsOfAMapAreFoundInOrderOfTheirPlaces() throws ProblemsException {
        MapReader map = reader("count: many\nnmae: x\nkind: hihg\nflag: yes\nlist: 3\nchild: 4\n");
        map.required("name", ScalarParser.text());
        map.optional("kind", ScalarParser.word(List.of("high", "low")));
        map.optional("count", ScalarParser.whole(0, 9));
        map.optional("flag", ScalarParser.flag());
        map.children("list", "an entry");
        map.child("child").ifPresent(child -> child.required("x", ScalarParser.number()));
        map.finish();
        assertThat(messages())
                .containsExactly(
                        "f:1:1: a thing needs the key 'name'",
                        "f:1:8: 'count': 'many' is not a whole number from 0 to 9",
                        "f:2:1: unknown key 'nmae' in a thing; did you mean 'name'?",
                        "f:3:7: 'kind': 'hihg' is not known here; did you mean 'high'?",
                        "f:4:7: 'flag': 'yes' is neither true nor false",
                        "f:5:7: 'list' needs a list, each entry after a dash, but this is the single value '3'",
                        "f:6:8: 'child' needs keys with values, but this is the single value '4'");
    }

    @Test
    void whatIsThereIsRead() throws ProblemsException {
        MapReader map = reader("name: ' x '\ncount: 7\nnumber: -1.5e2\nnames: [a, b]\none: c\n");
        assertThat(map.required("name", ScalarParser.text())).contains("x");
        assertThat(map.optional("count", ScalarParser.whole(0, 9))).contains(7L);
        assertThat(map.optional("number", ScalarParser.number())).contains(-150.0);
        assertThat(map.scalars("names", ScalarParser.text())).containsExactly("a", "b");
        assertThat(map.scalars("one", ScalarParser.text())).containsExactly("c");
        assertThat(map.optional("absent", ScalarParser.text())).isEmpty();
        map.finish();
        assertThat(messages()).isEmpty();
    }

    @Test
    void aMessageMayShowAnExampleOfWhatIsMissing() throws ProblemsException {
        MapReader map = reader("input: 5 V\n");
        map.required("name", ScalarParser.text(), "signal1");
        map.child("input", "{rising: 3.5 V}").ifPresent(input -> {
            // nothing more is said about a map that is none
            input.required("rising", ScalarParser.text());
            input.finish();
        });
        map.finish();
        assertThat(messages())
                .containsExactly(
                        "f:1:1: a thing needs the key 'name'; write for example name: signal1",
                        "f:1:8: 'input' needs keys with values, for example {rising: 3.5 V},"
                                + " but this is the single value '5 V'");
    }

    @Test
    void aLongTextIsShownByItsBeginning() throws ProblemsException {
        String key = "k".repeat(200);
        MapReader map = reader("a: " + "9".repeat(200) + "\n" + key + ": 1\nb: [1]\n");
        map.optional("a", ScalarParser.whole(0, 9));
        map.optional("b", ScalarParser.text());
        map.finish();
        assertThat(messages())
                .containsExactly(
                        "f:1:4: 'a': '" + "9".repeat(80) + "…' is not a whole number from 0 to 9",
                        "f:2:1: unknown key '" + "k".repeat(80) + "…' in a thing; known are a, b",
                        "f:3:4: 'b' needs a single value, but this is a list");
    }

    @ParameterizedTest
    @CsvSource({"minimum, min", "freq, frequency", "MAX, max", "fequency, frequency", "midn, min"})
    void theNearestWordIsTheOneWithTheFewestMistakes(String text, String word) {
        assertThat(Nearest.of(text, List.of("frequency", "max", "min", "duty"))).contains(word);
    }

    @Test
    void aFarWordListsAllKnownOnes() throws ProblemsException {
        MapReader map = reader("zzzzzzzz: 1\n");
        map.optional("a", ScalarParser.text());
        map.optional("b", ScalarParser.text());
        map.finish();
        assertThat(messages()).containsExactly("f:1:1: unknown key 'zzzzzzzz' in a thing; known are a, b");
    }

    @Test
    void numbersThatJavaWouldTakeButPeopleWouldNotAreRefused() throws ProblemsException {
        MapReader map = reader("a: 0x1p3\nb: NaN\nc: 1d\nd: 1e999\n");
        for (String key : List.of("a", "b", "c", "d")) {
            assertThat(map.optional(key, ScalarParser.number())).as(key).isEmpty();
        }
        assertThat(messages()).hasSize(4);
    }
}
