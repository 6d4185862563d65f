// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests.kit;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ExtendWith;

/** A test class that works a real window: its tests fail on freezes, leaked resources and errors in the log. */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(WindowExtension.class)
public @interface WindowTest {}
