// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.internal;

import org.dutywright.workbench.WidgetIds;
import org.dutywright.workbench.WorkbenchIds;
import org.eclipse.core.commands.ParameterizedCommand;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.jface.resource.ResourceLocator;
import org.eclipse.jface.resource.ResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.IEditorInput;
import org.eclipse.ui.IEditorSite;
import org.eclipse.ui.IWorkbenchCommandConstants;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.commands.ICommandService;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.part.EditorPart;

/** Says what to do first, and does it at a click. */
public final class StartPage extends EditorPart {
    /** Names of the buttons. */
    public static final String DEMONSTRATION_BUTTON = "start.demonstration";

    public static final String NEW_JOB_BUTTON = "start.newJob";
    public static final String IMPORT_BUTTON = "start.import";

    private static final String NEW_JOB_COMMAND = IWorkbenchCommandConstants.FILE_NEW + "("
            + IWorkbenchCommandConstants.FILE_NEW_PARM_WIZARDID + "=" + WorkbenchIds.NEW_JOB_WIZARD + ")";
    private static final String HELP_CONTEXT = "org.dutywright.workbench.start";
    private static final int TEXT_WIDTH = 440;

    private Button first;

    @Override
    public void init(IEditorSite site, IEditorInput input) throws PartInitException {
        setSite(site);
        setInput(input);
        setPartName(input.getName());
    }

    @Override
    public void createPartControl(Composite parent) {
        ScrolledComposite scrolled = new ScrolledComposite(parent, SWT.V_SCROLL | SWT.H_SCROLL);
        Composite page = new Composite(scrolled, SWT.NONE);
        GridLayoutFactory.fillDefaults()
                .numColumns(3)
                .margins(28, 16)
                .spacing(20, 14)
                .applyTo(page);
        head(page);
        first = step(
                page,
                "See it work",
                "Recordings of Harrow & Tern, a works yard that never was, most of them with a fault, are simulated "
                        + "on the spot.",
                "Make the demonstration job",
                DEMONSTRATION_BUTTON,
                WorkbenchIds.DEMONSTRATION);
        step(
                page,
                "Start a job of your own",
                "A job keeps the recordings of one vehicle or one complaint together.",
                "New job...",
                NEW_JOB_BUTTON,
                NEW_JOB_COMMAND);
        step(
                page,
                "Bring in recordings",
                "Drop files on the folder captures of a job, or import them. Tables of numbers with a column of time "
                        + "are read as they are.",
                "Import...",
                IMPORT_BUTTON,
                IWorkbenchCommandConstants.FILE_IMPORT);
        PlatformUI.getWorkbench().getHelpSystem().setHelp(page, HELP_CONTEXT);
        scrolled.setContent(page);
        scrolled.setExpandHorizontal(true);
        scrolled.setExpandVertical(true);
        scrolled.setMinSize(page.computeSize(SWT.DEFAULT, SWT.DEFAULT));
    }

    private static void head(Composite page) {
        ResourceManager images = new LocalResourceManager(JFaceResources.getResources(), page);
        Label icon = new Label(page, SWT.NONE);
        ResourceLocator.imageDescriptorFromBundle(StartPage.class, "icons/dutywright64.png")
                .ifPresent(descriptor -> icon.setImage(images.create(descriptor)));
        Composite words = new Composite(page, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, 4).applyTo(words);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).span(2, 1).applyTo(words);
        heading(words, "Is the sensor good?", JFaceResources.HEADER_FONT);
        Label text = new Label(words, SWT.NONE);
        text.setText("Record both signals, open the recording, and every cycle is measured and judged.");
    }

    private Button step(Composite page, String title, String words, String action, String id, String command) {
        new Label(page, SWT.NONE);
        Composite about = new Composite(page, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, 2).applyTo(about);
        heading(about, title, JFaceResources.BANNER_FONT);
        text(about, words);
        Button button = WidgetIds.name(new Button(page, SWT.PUSH), id);
        button.setText(action);
        button.addListener(SWT.Selection, event -> execute(command));
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(button);
        return button;
    }

    private static void heading(Composite parent, String words, String font) {
        Label label = new Label(parent, SWT.NONE);
        label.setFont(JFaceResources.getFont(font));
        label.setText(words);
    }

    private static void text(Composite parent, String words) {
        Label label = new Label(parent, SWT.WRAP);
        // A single & would be a mnemonic.
        label.setText(words.replace("&", "&&"));
        GridDataFactory.fillDefaults().hint(TEXT_WIDTH, SWT.DEFAULT).applyTo(label);
    }

    private void execute(String command) {
        try {
            ParameterizedCommand parsed =
                    getSite().getService(ICommandService.class).deserialize(command);
            getSite().getService(IHandlerService.class).executeCommand(parsed, null);
        } catch (CommandException e) {
            ILog.of(StartPage.class).error("The command " + command + " could not be carried out.", e);
        }
    }

    @Override
    public void setFocus() {
        first.setFocus();
    }

    @Override
    public void doSave(IProgressMonitor monitor) {}

    @Override
    public void doSaveAs() {}

    @Override
    public boolean isDirty() {
        return false;
    }

    @Override
    public boolean isSaveAsAllowed() {
        return false;
    }
}
