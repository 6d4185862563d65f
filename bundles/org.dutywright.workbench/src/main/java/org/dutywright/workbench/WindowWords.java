// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench;

import java.util.List;
import java.util.regex.Pattern;

/**
 * What the core advises, for a person at the window. The core speaks of the options of its command line, which are of no
 * use here.
 */
public final class WindowWords {
    private record Rule(Pattern advice, String words) {
        static Rule of(String advice, String words) {
            return new Rule(Pattern.compile(advice), words);
        }
    }

    private static final List<Rule> RULES = List.of(
            Rule.of(
                    "give the sample rate with --sample-rate HZ, or name the column of time stamps with --time-column",
                    "head the column of time stamps 'time (s)', or export the recording with time stamps"),
            Rule.of("correct the cell, or pick other columns with --channel", "correct the cell, or delete its column"),
            Rule.of("pick the complete columns with --channel", "delete the columns that are not complete"),
            Rule.of("name one with --channel [^=]*=(.*)$", "head the right column '$1'"),
            Rule.of("none given by --supply VOLTS", "no supply voltage was given for the check"),
            Rule.of(
                    "needs a supply channel or --supply VOLTS",
                    "needs a supply channel, or the supply voltage given for the check"),
            Rule.of("say so with --position", "choose its position for the check"),
            // What has no counterpart in the window is not worth advising.
            Rule.of("; [^;]*--[a-z][^;]*$", ""));

    private WindowWords() {}

    /** A message or a line of a report in the words of the window. */
    public static String of(String message) {
        String words = message;
        for (Rule rule : RULES) {
            words = rule.advice().matcher(words).replaceAll(rule.words());
        }
        return words;
    }
}
