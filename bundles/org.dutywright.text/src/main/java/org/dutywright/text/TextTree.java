// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlVersionException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * Parses YAML 1.2 into nodes with places. Values stay the text that the author wrote: nothing becomes a number or a
 * date here. Size, depth and number of nodes are limited, and references to other nodes are refused, so that a
 * hostile file costs no more than its length.
 */
public final class TextTree {
    /** Longest text in characters. */
    public static final int MAX_CHARACTERS = 1 << 20;

    private static final Mark START = new Mark(1, 1);

    private final Problems problems;

    private TextTree(Problems problems) {
        this.problems = problems;
    }

    /**
     * Reads a UTF-8 file as text.
     *
     * @throws ProblemsException if it is too long or not UTF-8
     */
    public static String read(Path file) throws IOException, ProblemsException {
        if (Files.size(file) > 4L * MAX_CHARACTERS) {
            throw single(file.toString(), START, tooLong());
        }
        byte[] bytes = Files.readAllBytes(file);
        CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        try {
            return decoder.decode(buffer).toString();
        } catch (CharacterCodingException e) {
            String before = new String(bytes, 0, buffer.position(), StandardCharsets.UTF_8);
            throw single(file.toString(), endOf(before), "this byte is not UTF-8; save the file as UTF-8 text");
        }
    }

    /**
     * Parses a text.
     *
     * @param fileName the file as the user named it, for messages
     * @throws ProblemsException if the text is empty or no YAML, or has a key twice
     */
    public static TextNode parse(String fileName, String content) throws ProblemsException {
        if (content.length() > MAX_CHARACTERS) {
            throw single(fileName, START, tooLong());
        }
        // the library would refuse keys that are no single words without a place
        LoadSettings settings = LoadSettings.builder()
                .setCodePointLimit(MAX_CHARACTERS)
                .setAllowNonScalarKeys(true)
                .build();
        Problems problems = new Problems(fileName);
        String text = content.startsWith("\ufeff") ? content.substring(1) : content;
        try {
            new TextLimits(settings, problems).check(text);
            problems.throwIfAny();
            Optional<Node> root = new Compose(settings).composeString(text);
            if (root.isEmpty()) {
                throw single(fileName, START, "the file is empty");
            }
            TextNode node = new TextTree(problems).convert(root.get());
            problems.throwIfAny();
            return node;
        } catch (MarkedYamlEngineException e) {
            throw single(fileName, e.getProblemMark().map(TextTree::mark).orElse(START), notYaml(e));
        } catch (ReaderException e) {
            throw single(fileName, placeOf(text, e.getPosition()), "a character that YAML does not allow");
        } catch (YamlVersionException e) {
            throw single(fileName, START, "this version of YAML is not read; leave out the line %YAML");
        } catch (YamlEngineException e) {
            throw single(fileName, START, plain(e.getMessage()));
        }
    }

    private TextNode convert(Node node) {
        return switch (node) {
            case MappingNode map -> convertMap(map);
            case SequenceNode list -> {
                List<TextNode> items = new ArrayList<>();
                list.getValue().forEach(item -> items.add(convert(item)));
                yield new TextNode.ListNode(markOf(node), items);
            }
            default ->
                new TextNode.ScalarNode(markOf(node), ((org.snakeyaml.engine.v2.nodes.ScalarNode) node).getValue());
        };
    }

    private TextNode convertMap(MappingNode map) {
        Map<String, TextNode.Entry> entries = new LinkedHashMap<>();
        for (NodeTuple tuple : map.getValue()) {
            Mark keyMark = markOf(tuple.getKeyNode());
            TextNode value = convert(tuple.getValueNode());
            if (!(tuple.getKeyNode() instanceof org.snakeyaml.engine.v2.nodes.ScalarNode key)) {
                problems.add(keyMark, "a key must be a single word");
                continue;
            }
            TextNode.Entry before = entries.putIfAbsent(key.getValue(), new TextNode.Entry(keyMark, value));
            if (before != null) {
                problems.add(
                        keyMark,
                        "'" + Visible.shortened(key.getValue()) + "' stands here a second time; the first is in line "
                                + before.keyMark().line());
            }
        }
        return new TextNode.MapNode(markOf(map), entries);
    }

    private static Mark markOf(Node node) {
        return node.getStartMark().map(TextTree::mark).orElse(START);
    }

    static Mark mark(org.snakeyaml.engine.v2.exceptions.Mark mark) {
        return new Mark(mark.getLine() + 1, mark.getColumn() + 1);
    }

    private static Mark placeOf(String text, int codePoints) {
        int end = text.offsetByCodePoints(0, Math.min(codePoints, text.codePointCount(0, text.length())));
        return endOf(text.substring(0, end));
    }

    // counts as the YAML reader does: lines end with LF, CR LF or CR, and columns are characters, not their halves
    private static Mark endOf(String before) {
        String lines = before.replace("\r\n", "\n").replace('\r', '\n');
        int line = (int) lines.chars().filter(c -> c == '\n').count() + 1;
        int start = lines.lastIndexOf('\n') + 1;
        return new Mark(line, lines.codePointCount(start, lines.length()) + 1);
    }

    private static String tooLong() {
        return "the text is longer than " + MAX_CHARACTERS + " characters";
    }

    // some problems are the second half of a sentence
    private static String notYaml(MarkedYamlEngineException e) {
        String problem = e.getProblem();
        return plain(problem.startsWith("but ") && e.getContext() != null ? e.getContext() + ", " + problem : problem);
    }

    private static String plain(String problem) {
        return "this is not YAML: " + problem.lines().findFirst().orElse("no details");
    }

    private static ProblemsException single(String file, Mark mark, String message) {
        return new ProblemsException(List.of(new Problem(file, mark, message)));
    }
}
