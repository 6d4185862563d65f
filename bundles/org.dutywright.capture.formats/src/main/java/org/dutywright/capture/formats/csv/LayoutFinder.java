// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.Delimiter;
import org.dutywright.capture.TableSettings;
import org.dutywright.capture.formats.csv.Layout.Kind;

/**
 * Finds delimiter, decimal mark, headings and first row of a table by looking at the start of a file.
 *
 * <p>Every pair of delimiter and decimal mark is tried on the last quarter of the lines, which is most surely table:
 * the pair wins that makes numbers of the largest share of its cells, then the one with more columns. Its columns of
 * numbers then tell where the table starts: at the first row that has numbers in all of them. What the user says is not
 * looked for.
 */
final class LayoutFinder {
    private static final int TAIL_SHARE = 4;
    private static final int FEWEST_TAIL_ROWS = 2;
    private static final int SAMPLE_ROWS = 2000;

    private LayoutFinder() {}

    private record Candidate(Layout layout, double numberShare) {}

    /** The layout, empty if no pair makes a table with numbers. */
    static Optional<Layout> find(HeadText head) {
        return find(head, TableSettings.none());
    }

    /** The layout, where the user may say parts of it. */
    static Optional<Layout> find(HeadText head, TableSettings said) {
        Optional<Candidate> best = Optional.empty();
        boolean quotes = head.text().indexOf('"') >= 0;
        for (Delimiter delimiter : said.delimiter().map(List::of).orElse(List.of(Delimiter.values()))) {
            List<HeadRow> rows = HeadRow.split(head.text(), delimiter);
            for (boolean comma : said.decimalComma().map(List::of).orElse(List.of(false, true))) {
                // a comma can be both only where quotes tell the one from the other
                if (comma && delimiter == Delimiter.COMMA && !quotes) {
                    continue;
                }
                Optional<Candidate> candidate = candidate(rows, delimiter, comma, said);
                if (candidate.isPresent() && (best.isEmpty() || isBetter(candidate.get(), best.get()))) {
                    best = candidate;
                }
            }
        }
        return best.map(found -> withQuotes(found.layout(), head.text()));
    }

    private static boolean isBetter(Candidate candidate, Candidate best) {
        int byShare = Double.compare(candidate.numberShare(), best.numberShare());
        return byShare > 0
                || (byShare == 0 && candidate.layout().width() > best.layout().width());
    }

    private static Optional<Candidate> candidate(
            List<HeadRow> all, Delimiter delimiter, boolean comma, TableSettings said) {
        long from = said.firstLine()
                .orElse(1
                        + Math.max(said.headerLine().orElse(0), said.unitsLine().orElse(0)));
        List<HeadRow> rows = all.stream()
                .filter(row -> row.line() >= from && !row.isComment())
                .toList();
        if (rows.isEmpty()) {
            return Optional.empty();
        }
        NumberCell number = new NumberCell(comma);
        int tailRows = Math.min(rows.size(), Math.max(FEWEST_TAIL_ROWS, rows.size() / TAIL_SHARE));
        List<HeadRow> tail = rows.subList(rows.size() - tailRows, rows.size());
        int width = commonWidth(tail);
        List<Kind> tailKinds = kinds(tail, width, number);
        int first = said.firstLine().isPresent() ? 0 : firstData(rows, tailKinds, number);
        if (first < 0) {
            return Optional.empty();
        }
        List<HeadRow> sample = rows.subList(first, Math.min(rows.size(), first + SAMPLE_ROWS));
        List<Kind> kinds = kinds(sample, width, number);
        if (!kinds.contains(Kind.NUMBERS)) {
            return Optional.empty();
        }
        HeaderFinder header =
                HeaderFinder.of(all, sample.get(0), kinds, delimiter, number).as(said, all);
        Layout layout = new Layout(delimiter, comma, header.header(), header.units(), sample, kinds, false);
        return Optional.of(new Candidate(layout, numberShare(tail, number)));
    }

    /** The most frequent number of cells, the larger one of equally frequent ones. */
    private static int commonWidth(List<HeadRow> rows) {
        Map<Integer, Integer> counts = new HashMap<>();
        int best = 0;
        for (HeadRow row : rows) {
            counts.merge(row.width(), 1, Integer::sum);
        }
        for (Map.Entry<Integer, Integer> entry : counts.entrySet()) {
            int versus = best == 0 ? -1 : entry.getValue() - counts.get(best);
            if (best == 0 || versus > 0 || (versus == 0 && entry.getKey() > best)) {
                best = entry.getKey();
            }
        }
        return best;
    }

    private static List<Kind> kinds(List<HeadRow> rows, int width, NumberCell number) {
        List<Kind> kinds = new ArrayList<>();
        for (int column = 0; column < width; column++) {
            int numbers = 0;
            int others = 0;
            int clocks = 0;
            for (HeadRow row : rows) {
                String cell = row.cell(column);
                if (number.isNumber(cell)) {
                    numbers++;
                } else if (!number.isNumberOrMissing(cell)) {
                    others++;
                    clocks += ClockCell.isClock(cell) ? 1 : 0;
                }
            }
            boolean clock = numbers == 0 && 2 * clocks > others;
            kinds.add(clock ? Kind.CLOCK : kind(numbers, others, rows.size()));
        }
        return kinds;
    }

    private static Kind kind(int numbers, int others, int rows) {
        if (numbers + others == 0) {
            return Kind.EMPTY;
        }
        if (numbers < others) {
            return Kind.TEXT;
        }
        return 2 * (numbers + others) < rows ? Kind.SPARSE : Kind.NUMBERS;
    }

    private static double numberShare(List<HeadRow> rows, NumberCell number) {
        int numbers = 0;
        int cells = 0;
        for (HeadRow row : rows) {
            for (String cell : row.cells()) {
                numbers += number.isNumber(cell) || ClockCell.isClock(cell) ? 1 : 0;
                cells += cell.isEmpty() ? 0 : 1;
            }
        }
        return cells == 0 ? 0 : (double) numbers / cells;
    }

    /** Index of the first row of values, -1 if there is none. */
    private static int firstData(List<HeadRow> rows, List<Kind> kinds, NumberCell number) {
        int first = 0;
        while (first < rows.size() && !isData(rows.get(first), kinds, number)) {
            first++;
        }
        if (first == rows.size()) {
            return -1;
        }
        // a row with a spoiled cell, between the headings and the first whole row, is one of values all the same
        while (first >= 2
                && fits(rows.get(first - 1), kinds)
                && hasNumber(rows.get(first - 1), kinds, number)
                && fits(rows.get(first - 2), kinds)) {
            first--;
        }
        return first;
    }

    private static boolean fits(HeadRow row, List<Kind> kinds) {
        return row.width() == kinds.size();
    }

    private static boolean isData(HeadRow row, List<Kind> kinds, NumberCell number) {
        if (!fits(row, kinds)) {
            return false;
        }
        for (int column = 0; column < kinds.size(); column++) {
            String cell = row.cell(column);
            boolean wrong = switch (kinds.get(column)) {
                case NUMBERS -> !number.isNumberOrMissing(cell);
                case CLOCK -> !cell.isEmpty() && !ClockCell.isClock(cell);
                default -> false;
            };
            if (wrong) {
                return false;
            }
        }
        return hasNumber(row, kinds, number);
    }

    private static boolean hasNumber(HeadRow row, List<Kind> kinds, NumberCell number) {
        for (int column = 0; column < kinds.size(); column++) {
            if (kinds.get(column) != Kind.TEXT && number.isNumber(row.cell(column))) {
                return true;
            }
        }
        return false;
    }

    private static Layout withQuotes(Layout layout, String text) {
        boolean quoted = layout.delimiter() != Delimiter.SPACES
                && text.indexOf('"', LineStarts.offset(text, layout.firstDataLine())) >= 0;
        return quoted ? layout.withQuotes() : layout;
    }
}
