// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.internal;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.util.Optional;
import org.eclipse.core.runtime.FileLocator;
import org.eclipse.core.runtime.ILog;
import org.eclipse.help.IContext;
import org.eclipse.help.IHelpResource;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.help.AbstractHelpUI;
import org.osgi.framework.Bundle;
import org.osgi.framework.FrameworkUtil;

/**
 * Shows the help as plain pages in the system's browser. The platform's own way serves them over a port of this machine,
 * with a web server, a page compiler and a Java compiler in the product; a dozen pages need none of that.
 */
public final class HelpPages extends AbstractHelpUI {
    /** The id of the extension that contributes this class. */
    public static final String ID = "org.dutywright.workbench.help";

    private static final String FOLDER = "help/";
    private static final String INDEX = FOLDER + "index.html";

    @Override
    public void displayHelp() {
        show(INDEX);
    }

    @Override
    public void displaySearch() {
        show(INDEX);
    }

    @Override
    public void displayDynamicHelp() {
        show(INDEX);
    }

    @Override
    public void search(String expression) {
        show(INDEX);
    }

    @Override
    public void displayContext(IContext context, int x, int y) {
        show(pageOf(context));
    }

    @Override
    public void displayHelpResource(String href) {
        show(pathIn(href));
    }

    /** Nothing pops up over the window, so nothing is ever in the way of it. */
    @Override
    public boolean isContextHelpDisplayed() {
        return false;
    }

    /** The page that a context leads to: that of its first topic, else the index. */
    public static String pageOf(IContext context) {
        if (context == null) {
            return INDEX;
        }
        for (IHelpResource topic : context.getRelatedTopics()) {
            return pathIn(topic.getHref());
        }
        return INDEX;
    }

    /** A page as a file on disk, empty where there is no such page. The pages beside it come along, so that links work. */
    public static Optional<URI> file(String page) throws IOException {
        Bundle bundle = FrameworkUtil.getBundle(HelpPages.class);
        if (bundle.getEntry(page) == null) {
            return Optional.empty();
        }
        FileLocator.toFileURL(bundle.getEntry(FOLDER));
        URL file = FileLocator.toFileURL(bundle.getEntry(page));
        try {
            // The locator leaves blanks in the path as they are.
            return Optional.of(new URI(file.getProtocol(), file.getPath(), null));
        } catch (URISyntaxException e) {
            throw new IOException("the help page " + file + " has a place that no browser understands", e);
        }
    }

    /** The platform puts the bundle's name before the path that contexts.xml gives. */
    private static String pathIn(String href) {
        String prefix = "/" + FrameworkUtil.getBundle(HelpPages.class).getSymbolicName() + "/";
        return href.startsWith(prefix) ? href.substring(prefix.length()) : href;
    }

    private static void show(String page) {
        try {
            URI file = file(page).or(() -> index()).orElseThrow(() -> new IOException(page + " is missing"));
            PlatformUI.getWorkbench().getBrowserSupport().getExternalBrowser().openURL(file.toURL());
        } catch (IOException | PartInitException e) {
            ILog.of(HelpPages.class).error("The help page " + page + " cannot be shown.", e);
        }
    }

    private static Optional<URI> index() {
        try {
            return file(INDEX);
        } catch (IOException e) {
            return Optional.empty();
        }
    }
}
