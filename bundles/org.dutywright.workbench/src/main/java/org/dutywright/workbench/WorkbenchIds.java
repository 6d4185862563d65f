// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench;

/** Ids that other bundles, the product and the tests refer to; each stands in plugin.xml as well. */
public final class WorkbenchIds {
    /** The product. */
    public static final String PRODUCT = "org.dutywright.workbench.product";
    /** The perspective in which captures are opened and measured. */
    public static final String PERSPECTIVE = "org.dutywright.workbench.perspective";
    /** The view of what was measured, of a bundle of its own. */
    public static final String MEASUREMENT_VIEW = "org.dutywright.workbench.pulse.view";
    /** The nature of a project that keeps the captures of one job. */
    public static final String JOB_NATURE = "org.dutywright.workbench.job";
    /** The page that says what to do first. */
    public static final String START_PAGE = "org.dutywright.workbench.start";
    /** The wizard that makes a job. */
    public static final String NEW_JOB_WIZARD = "org.dutywright.workbench.newJob";
    /** The page of preferences with the settings of measuring. */
    public static final String MEASURING_PAGE = "org.dutywright.workbench.measuring";
    /** The command that shows the start page. */
    public static final String OPEN_START_PAGE = "org.dutywright.workbench.openStartPage";
    /** The command that simulates the demonstration captures into a job. */
    public static final String DEMONSTRATION = "org.dutywright.workbench.demonstration";

    private WorkbenchIds() {}
}
