// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.wav;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.CaptureValues;
import org.dutywright.capture.formats.SharedData;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Against the test files of SciPy (../shared/data/wav, BSD-3). Expected: what scipy.io.wavfile.read of SciPy 1.17.1
 * gives, as whole numbers or floats, and the power of two that is full scale. It refuses the inconsistent file (expected is
 * then its sound sister) and u-law (expected then G.711: segment 8 from its end 32124 of 32768 down in
 * steps of 1024, codes 3 and 11).
 */
class WavSharedDataTest {

    @ParameterizedTest
    @CsvSource({
        // file, rate, channels, rows, exponent of full scale, offset, first six samples, last three samples
        "test-1234Hz-le-1ch-10S-20bit-extra, 1234, 1, 10, 31, 0, 2147479552 -2147479552 1073739776 -1073739776 536869888 -536869888, -268434944 134217472 -134217472",
        "test-44100Hz-2ch-32bit-float-be, 44100, 2, 441, 0, 0, 0.0 0.0 0.05011868476867676 0.05011868476867676 0.10004043579101562 0.10004043579101562, 0.5474715232849121 0.5098514556884766 0.5098514556884766",
        "test-44100Hz-2ch-32bit-float-le, 44100, 2, 441, 0, 0, 0.0 0.0 0.05011868476867676 0.05011868476867676 0.10004043579101562 0.10004043579101562, 0.5474714636802673 0.5098513960838318 0.5098513960838318",
        "test-44100Hz-be-1ch-4bytes, 44100, 1, 4410, 31, 0, 9538171 211394107 428130516 625451549 818787617 987821398, -625585390 -427790878 -212242929",
        "test-44100Hz-le-1ch-4bytes-early-eof, 44100, 1, 236, 31, 0, 9538171 211394107 428130516 625451549 818787617 987821398, 1480667466 1420818758 1332177083",
        "test-44100Hz-le-1ch-4bytes-rf64, 44100, 1, 4410, 31, 0, 9538171 211394107 428130516 625451549 818787617 987821398, -625585390 -427790878 -212242929",
        "test-44100Hz-le-1ch-4bytes, 44100, 1, 4410, 31, 0, 9538171 211394107 428130516 625451549 818787617 987821398, -625585390 -427790878 -212242929",
        "test-48000Hz-2ch-64bit-float-le-wavex, 48000, 2, 480, 0, 0, 0.0 0.0 0.04605122283101082 0.04605122283101082 0.09194972366094589 0.09194972366094589, 0.5415007472038269 0.5067047476768494 0.5067047476768494",
        "test-8000Hz-be-3ch-5S-24bit, 8000, 3, 5, 31, 0, -2147483648 -2147483392 -512 -1073741824 -1073741568 -256, 2147483392 2147483392 512",
        "test-8000Hz-le-1ch-1byte-ulaw, 8000, 1, 9, 15, 0, 0 20860 29052 20860 0 -20860, -29052 -20860 0",
        "test-8000Hz-le-2ch-1byteu, 8000, 2, 800, 7, 128, 136 136 189 189 217 218, 37 67 66",
        "test-8000Hz-le-3ch-5S-24bit-inconsistent, 8000, 3, 5, 31, 0, -2147483648 -2147483392 -512 -1073741824 -1073741568 -256, 2147483392 2147483392 512",
        "test-8000Hz-le-3ch-5S-24bit-rf64, 8000, 3, 5, 31, 0, -2147483648 -2147483392 -512 -1073741824 -1073741568 -256, 2147483392 2147483392 512",
        "test-8000Hz-le-3ch-5S-24bit, 8000, 3, 5, 31, 0, -2147483648 -2147483392 -512 -1073741824 -1073741568 -256, 2147483392 2147483392 512",
        "test-8000Hz-le-3ch-5S-36bit, 8000, 3, 5, 63, 0, -9223372036854775808 -9223372036586340352 -536870912 -4611686018427387904 -4611686018158952448 -268435456, 9223372036586340352 9223372036586340352 536870912",
        "test-8000Hz-le-3ch-5S-45bit, 8000, 3, 5, 63, 0, -9223372036854775808 -9223372036854251520 -1048576 -4611686018427387904 -4611686018426863616 -524288, 9223372036854251520 9223372036854251520 1048576",
        "test-8000Hz-le-3ch-5S-53bit, 8000, 3, 5, 63, 0, -9223372036854775808 -9223372036854773760 -4096 -4611686018427387904 -4611686018427385856 -2048, 9223372036854773760 9223372036854773760 4096",
        "test-8000Hz-le-3ch-5S-64bit, 8000, 3, 5, 63, 0, -9223372036854775808 -9223372036854775807 -2 -4611686018427387904 -4611686018427387903 -1, 9223372036854775807 9223372036854775807 2",
        "test-8000Hz-le-4ch-9S-12bit, 8000, 4, 9, 15, 0, 0 0 0 0 23168 32752, 0 0 0",
        "test-8000Hz-le-5ch-9S-5bit, 8000, 5, 9, 7, 128, 128 128 128 128 128 216, 128 128 128"
    })
    void valuesAreThoseOfSciPy(
            String name, double rate, int channels, int rows, int exponent, int offset, String first, String last)
            throws UnreadableException, IOException {
        try (Capture capture = new WavCaptureReader().read(file(name), ReadSettings.none(), Progress.NONE)) {
            assertThat(capture.timeBase().sampleRateHz()).hasValue(rate);
            assertThat(capture.channels()).hasSize(channels);
            assertThat(capture.sampleCount()).isEqualTo(rows);
            String[] starts = first.split(" ", -1);
            for (int i = 0; i < starts.length; i++) {
                assertThat(sample(capture, i)).isEqualTo(share(starts[i], exponent, offset));
            }
            String[] ends = last.split(" ", -1);
            for (int i = 0; i < ends.length; i++) {
                int at = rows * channels - ends.length + i;
                assertThat(sample(capture, at)).isEqualTo(share(ends[i], exponent, offset));
            }
        }
    }

    private static double share(String text, int exponent, int offset) {
        return Math.scalb(Double.parseDouble(text) - offset, -exponent);
    }

    private static double sample(Capture capture, int number) throws IOException {
        int channels = capture.channels().size();
        return CaptureValues.valuesOf(capture, number % channels)[number / channels];
    }

    @ParameterizedTest
    @ValueSource(strings = {"early-eof-no-data", "incomplete-chunk"})
    void filesWithoutSamplesAreRefusedWithTheByte(String name) {
        Path file = file("test-44100Hz-le-1ch-4bytes-" + name);
        assertThatThrownBy(() -> new WavCaptureReader().read(file, ReadSettings.none(), Progress.NONE))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining(", byte ")
                .hasMessageContaining("the file ends inside the chunks before the samples");
    }

    private static Path file(String name) {
        Optional<Path> folder = SharedData.folder("wav");
        assumeTrue(folder.isPresent(), "../shared/data/wav is absent: " + name + " is not checked");
        return folder.get().resolve(name + ".wav");
    }
}
