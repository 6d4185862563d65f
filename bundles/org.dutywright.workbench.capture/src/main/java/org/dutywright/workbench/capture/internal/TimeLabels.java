// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import java.text.FieldPosition;
import java.text.Format;
import java.text.ParsePosition;
import org.dutywright.workbench.capture.view.TimeScale;
import org.dutywright.workbench.capture.view.Ticks;

/** Labels of the time axis: instants with unit and prefix, as exact as the axis' steps ask for. */
final class TimeLabels extends Format {
    /** Distance of labels that the axis is asked for. */
    static final int STEP_PIXELS = 96;

    private static final long serialVersionUID = 1L;
    // the axis rounds three quarters of a decade and more up to the next
    private static final double ROUNDED_UP = 0.75;

    private final double step;

    private TimeLabels(double step) {
        this.step = step;
    }

    static TimeLabels of(TimeScale scale) {
        double hint = scale.secondsPerPixel() * STEP_PIXELS;
        return new TimeLabels(Math.pow(10, Math.floor(Math.log10(hint / ROUNDED_UP))));
    }

    @Override
    public StringBuffer format(Object value, StringBuffer target, FieldPosition position) {
        return target.append(new Ticks(step, "s").label(((Number) value).doubleValue()));
    }

    @Override
    public Object parseObject(String source, ParsePosition position) {
        throw new UnsupportedOperationException("labels are not read");
    }
}
