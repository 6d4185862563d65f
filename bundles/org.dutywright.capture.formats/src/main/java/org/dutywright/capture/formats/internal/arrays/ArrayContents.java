// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal.arrays;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What a reader found in a file of named arrays. Filled by the reader, read once by {@link ArrayCapture}. */
public final class ArrayContents {
    private static final int MOST_NAMED = 12;

    private final Path file;
    private final char separator;
    private final List<NumberArray> arrays = new ArrayList<>();
    private final Facts facts = new Facts();
    private final Map<String, List<String>> leftOut = new LinkedHashMap<>();

    /**
     * For a file.
     *
     * @param file for messages
     * @param separator what the format writes between the names of a path
     */
    public ArrayContents(Path file, char separator) {
        this.file = file;
        this.separator = separator;
    }

    /** The file. */
    public Path file() {
        return file;
    }

    /** Arrays of two rows or more, in the order of the file. */
    public List<NumberArray> arrays() {
        return arrays;
    }

    /** Single numbers and short texts. */
    public Facts facts() {
        return facts;
    }

    /**
     * Notes something that is no array of numbers.
     *
     * @param path its place
     * @param why in a few words, the same for things of a kind
     */
    public void leaveOut(String path, String why) {
        leftOut.computeIfAbsent(why, kind -> new ArrayList<>()).add(path);
    }

    /** A path as users of the format write it. */
    String shown(String path) {
        return path.replace('/', separator);
    }

    /** What was left out, in one line; empty if nothing was. */
    String leftOutText() {
        List<String> parts = new ArrayList<>();
        leftOut.forEach((why, paths) -> parts.add(listed(paths) + " (" + why + ")"));
        return String.join("; ", parts);
    }

    /** Paths in one line, the first few by name. */
    String listed(List<String> paths) {
        String named = String.join(
                ", ", paths.stream().limit(MOST_NAMED).map(this::shown).toList());
        return paths.size() > MOST_NAMED ? named + " and " + (paths.size() - MOST_NAMED) + " more" : named;
    }
}
