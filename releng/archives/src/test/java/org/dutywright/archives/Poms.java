// SPDX-License-Identifier: EPL-2.0
package org.dutywright.archives;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** Versions as the root pom and the target definition name them, by group and artifact. */
final class Poms {
    private Poms() {}

    /** What the root pom manages, its properties put in. */
    static Map<String, String> managed() {
        Document pom = parse(Checkout.root().resolve("pom.xml"));
        Element management =
                (Element) pom.getElementsByTagName("dependencyManagement").item(0);
        Map<String, String> versions = versions(management);
        versions.keySet().removeIf(artifact -> artifact.startsWith("org.dutywright:"));
        versions.replaceAll((artifact, version) -> value(pom, version));
        return versions;
    }

    /** What the target definition takes from the repository. */
    static Map<String, String> target() {
        return versions(parse(Checkout.root().resolve("releng/platform/org.dutywright.platform.target"))
                .getDocumentElement());
    }

    private static String value(Document pom, String version) {
        return version.startsWith("${")
                ? text(pom.getDocumentElement(), version.substring(2, version.length() - 1))
                : version;
    }

    private static Map<String, String> versions(Element parent) {
        Map<String, String> versions = new TreeMap<>();
        elements(parent, "dependency").forEach(dependency -> {
            String artifact = text(dependency, "groupId") + ":" + text(dependency, "artifactId");
            if (versions.put(artifact, text(dependency, "version")) != null) {
                throw new AssertionError(artifact + " is named twice");
            }
        });
        return versions;
    }

    private static String text(Element parent, String tag) {
        return elements(parent, tag).findFirst().orElseThrow().getTextContent().strip();
    }

    private static Stream<Element> elements(Element parent, String tag) {
        NodeList nodes = parent.getElementsByTagName(tag);
        return IntStream.range(0, nodes.getLength()).mapToObj(nodes::item).map(Element.class::cast);
    }

    private static Document parse(Path file) {
        try {
            return DocumentBuilderFactory.newDefaultInstance()
                    .newDocumentBuilder()
                    .parse(file.toFile());
        } catch (IOException | SAXException | ParserConfigurationException e) {
            throw new AssertionError(file + " cannot be read", e);
        }
    }
}
