// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.mat;

import java.io.IOException;
import us.hebi.matlab.mat.format.Mat5;
import us.hebi.matlab.mat.format.Mat5Reader;
import us.hebi.matlab.mat.types.AbstractArray;
import us.hebi.matlab.mat.types.Array;
import us.hebi.matlab.mat.types.Source;

/** The library's parser, which makes room for as many elements as a cell or a struct declares, kept within limits. */
final class MatParser extends Mat5Reader {
    private static final int MOST_ARRAYS = 20_000;
    private static final int MOST_DEPTH = 32;
    private static final int MOST_CELLS = 1000;
    private static final long MOST_FIELDS = 20_000;

    private final MatInput input;
    private final int[] arrays;
    private int depth;

    MatParser(Source source, MatInput input) {
        this(source, input, new int[1]);
    }

    private MatParser(Source source, MatInput input, int[] arrays) {
        super(source);
        this.input = input;
        this.arrays = arrays;
        setBufferAllocator(input.spill());
        disableSubsystemProcessing();
    }

    @Override
    protected Mat5Reader createChildReader(Source child) {
        MatParser reader = new MatParser(child, input, arrays);
        reader.filter = filter;
        reader.mcos = mcos;
        return reader;
    }

    @Override
    protected Array readNestedArray() throws IOException {
        if (++arrays[0] > MOST_ARRAYS || depth >= MOST_DEPTH) {
            throw input.refused(
                    depth >= MOST_DEPTH ? "variables are nested too deep" : "more than " + MOST_ARRAYS + " variables",
                    "save the arrays of one recording only");
        }
        depth++;
        try {
            return super.readNestedArray();
        } finally {
            depth--;
        }
    }

    @Override
    protected Array readCell(EntryHeader header) throws IOException {
        long count = AbstractArray.getNumElementsLong(header.getDimensions());
        if (count >= 0 && count <= MOST_CELLS) {
            return super.readCell(header);
        }
        for (long i = 0; i < count; i++) {
            readNestedArray();
        }
        return Mat5.newCell(0, 0);
    }

    @Override
    protected Array[][] readValues(EntryHeader header, int numFields, String[] names) throws IOException {
        long count = AbstractArray.getNumElementsLong(header.getDimensions());
        if (count < 0 || count * Math.max(1, numFields) > MOST_FIELDS || numFields > MOST_FIELDS) {
            throw input.refused(
                    "an array of " + count + " structs of " + numFields + " fields",
                    "save the arrays of one recording only");
        }
        return super.readValues(header, numFields, names);
    }
}
