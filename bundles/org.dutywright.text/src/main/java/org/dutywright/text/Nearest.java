// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** Finds the known word that a mistyped one is nearest to. */
public final class Nearest {
    private Nearest() {}

    /** The nearest of the words by edit distance, empty if all are far. */
    public static Optional<String> of(String text, Collection<String> words) {
        int limit = Math.max(2, text.length() / 2);
        return words.stream()
                .min(Comparator.comparingInt((String word) -> difference(text, word))
                        .thenComparing(word -> word))
                .filter(word -> difference(text, word) <= limit);
    }

    // a word written out or cut short is one mistake, however many letters that takes
    private static int difference(String text, String word) {
        boolean oneBeginsTheOther = !text.isEmpty() && (text.startsWith(word) || word.startsWith(text));
        return oneBeginsTheOther ? Math.min(1, distance(text, word)) : distance(text, word);
    }

    /** "did you mean 'x'?" where a word is near, else a list of all. */
    public static String hint(String text, Collection<String> words) {
        return of(text, words)
                .map(word -> "did you mean '" + word + "'?")
                .orElseGet(() -> "known are " + String.join(", ", words));
    }

    // Levenshtein, without regard to case
    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                boolean same = Character.toLowerCase(a.charAt(i - 1)) == Character.toLowerCase(b.charAt(j - 1));
                int change = diagonal + (same ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
