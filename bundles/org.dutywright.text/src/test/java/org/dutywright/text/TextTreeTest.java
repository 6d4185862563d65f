// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TextTreeTest {
    private static List<String> problemsOf(String text) {
        ProblemsException thrown = catchThrowableOfType(ProblemsException.class, () -> TextTree.parse("a.yaml", text));
        return thrown == null
                ? List.of()
                : thrown.problems().stream().map(Problem::toString).toList();
    }

    @Test
    void nodesKeepTheirPlacesAndTheTextOfTheirValues() throws ProblemsException {
        TextNode.MapNode root =
                (TextNode.MapNode) TextTree.parse("a.yaml", "# why\nid: 007\nlist:\n  - {max: 1.50 V}\n");
        assertThat(root.entries().keySet()).containsExactly("id", "list");
        assertThat(root.entries().get("id").value()).isEqualTo(new TextNode.ScalarNode(new Mark(2, 5), "007"));
        TextNode.ListNode list = (TextNode.ListNode) root.entries().get("list").value();
        TextNode.MapNode item = (TextNode.MapNode) list.items().getFirst();
        assertThat(item.mark()).isEqualTo(new Mark(4, 5));
        assertThat(item.entries().get("max").keyMark()).isEqualTo(new Mark(4, 6));
        assertThat(item.entries().get("max").value()).isEqualTo(new TextNode.ScalarNode(new Mark(4, 11), "1.50 V"));
    }

    @Test
    void aByteOrderMarkIsNoPartOfTheFirstKey() throws ProblemsException {
        TextNode.MapNode root = (TextNode.MapNode) TextTree.parse("a.yaml", "\ufeffid: x\n");
        assertThat(root.entries()).containsOnlyKeys("id");
    }

    @Test
    void aKeyThatStandsTwiceIsReportedAtItsSecondPlace() {
        assertThat(problemsOf("id: a\nx: 1\nid: b\n"))
                .containsExactly("a.yaml:3:1: 'id' stands here a second time; the first is in line 1");
    }

    @Test
    void brokenYamlIsOneProblemWithItsPlace() {
        assertThat(problemsOf("id: a\nlist: [1, 2\n"))
                .singleElement()
                .asString()
                .startsWith("a.yaml:3:1: this is not YAML: ");
        assertThat(problemsOf("id: a\n\tx: 1\n")).singleElement().asString().startsWith("a.yaml:2:1: ");
        assertThat(problemsOf("id: \u0001\n")).containsExactly("a.yaml:1:5: a character that YAML does not allow");
        assertThat(problemsOf("")).containsExactly("a.yaml:1:1: the file is empty");
        assertThat(problemsOf("a: 1\n---\nb: 2\n"))
                .containsExactly("a.yaml:2:1: this is not YAML: expected a single document in the stream,"
                        + " but found another document");
        assertThat(problemsOf("%YAML 3.0\n---\na: 1\n"))
                .containsExactly("a.yaml:1:1: this version of YAML is not read; leave out the line %YAML");
    }

    @Test
    void hostileTextsCostNoMoreThanTheirLength() {
        String bomb = "a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n";
        assertThat(problemsOf(bomb))
                .containsExactly("a.yaml:2:8: a reference to another place is not read; write the value out");
        assertThat(problemsOf("[".repeat(100_000))).singleElement().asString().contains("nested deeper than 30 levels");
        assertThat(problemsOf("- a\n".repeat(250_000)))
                .singleElement()
                .asString()
                .contains("more than 200000 entries");
        assertThat(problemsOf("a: 1\nb: '" + "x".repeat(4001) + "'\n"))
                .containsExactly("a.yaml:2:4: a single value is longer than 4000 characters; shorten it");
        assertThat(problemsOf("? " + "x".repeat(4001) + "\n: 1\n"))
                .containsExactly("a.yaml:1:3: a single value is longer than 4000 characters; shorten it");
        assertThat(problemsOf("x".repeat(TextTree.MAX_CHARACTERS + 1)))
                .singleElement()
                .asString()
                .contains("longer than");
    }

    @Test
    void everyKindOfLineEndAndEveryCharacterCountsOnce() {
        // the musical symbol is two Java chars and one character
        assertThat(problemsOf("a: 1\r\nb: 1\rc: \uD834\uDD1E \u0001\n"))
                .containsExactly("a.yaml:3:6: a character that YAML does not allow");
        assertThat(problemsOf("x: \uD834\uDD1E\r\n'\uD834\uDD1E': 1\ra: 1\r\na: 2\n"))
                .containsExactly("a.yaml:4:1: 'a' stands here a second time; the first is in line 3");
    }

    @Test
    void aProblemStaysOnOneLineWhateverTheTextHolds() {
        assertThat(problemsOf("\"a\\n\\e[31m\\u202e\": 1\n\"a\\n\\e[31m\\u202e\": 2\n"))
                .containsExactly(
                        "a.yaml:2:1: 'a\\n\\u001b[31m\\u202e' stands here a second time; the first is in line 1");
    }

    @Test
    void aKeyThatIsNoSingleWordIsRefused() {
        assertThat(problemsOf("x: 1\n? [a, b]\n: 1\n")).containsExactly("a.yaml:2:3: a key must be a single word");
    }

    @Test
    void whatYamlCouldTurnIntoOtherThingsStaysText() throws ProblemsException {
        TextNode.ListNode list =
                (TextNode.ListNode) TextTree.parse("a.yaml", "[no, 0x1f, 1_000, 2026-11-25, ~, !!int '3', .inf]");
        assertThat(list.items())
                .extracting(item -> ((TextNode.ScalarNode) item).text())
                .containsExactly("no", "0x1f", "1_000", "2026-11-25", "~", "3", ".inf");
    }

    @Test
    void randomTextsNeverDoWorseThanAProblem() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(7);
        String alphabet = "ab:-[]{}&*!|>'\"%@`#,? \n\t\u00e9\u0000";
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder();
            int length = random.nextInt(1, 30);
            for (int k = 0; k < length; k++) {
                text.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            // any other exception would fail here
            problemsOf(text.toString()).forEach(problem -> assertThat(problem).matches("(?s)a\\.yaml:\\d+:\\d+: .+"));
        }
    }

    @Test
    void bytesThatAreNotUtf8AreNamedByTheirPlace(@TempDir Path folder) throws IOException {
        Path file = Files.write(folder.resolve("latin.yaml"), new byte[] {'a', '\n', 'b', (byte) 0xe4, '\n'});
        ProblemsException thrown = catchThrowableOfType(ProblemsException.class, () -> TextTree.read(file));
        assertThat(thrown.problems())
                .containsExactly(new Problem(
                        file.toString(), new Mark(2, 2), "this byte is not UTF-8; save the file as UTF-8 text"));
    }

    @Test
    void aFileThatIsTooLongIsNotEvenRead(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("long.yaml");
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            // more than any Java array holds: reading it whole could not even be tried
            sparse.setLength(3L << 30);
        }
        ProblemsException thrown = catchThrowableOfType(ProblemsException.class, () -> TextTree.read(file));
        assertThat(thrown).hasMessage(file + ":1:1: the text is longer than 1048576 characters");
    }
}
