// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.export;

import java.util.List;
import java.util.Map;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.capture.store.CaptureStore;

/** Writes the store: an Arrow IPC file that keeps everything. */
final class StoreWriter implements CaptureWriter {
    @Override
    public String ending() {
        return ".arrow";
    }

    @Override
    public Prepared prepare(Capture capture, Map<String, String> settings, Progress progress) {
        return new Prepared(stream -> CaptureStore.write(capture, settings, stream, progress), List.of());
    }
}
