// SPDX-License-Identifier: EPL-2.0
package org.dutywright.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** Every version stands in the properties of the root pom, and every module is built. */
final class PomsTest {
    static Stream<String> modules() throws Exception {
        return elements(rootPom(), "module").stream().map(Element::getTextContent);
    }

    @Test
    void every_bundle_is_a_module_of_the_build() throws Exception {
        List<String> folders =
                Checkout.bundles().stream().map("bundles/"::concat).toList();

        assertThat(modules()).containsAll(folders);
    }

    @ParameterizedTest
    @MethodSource("modules")
    void a_module_states_no_version_but_that_of_its_parent(String module) throws Exception {
        Document pom = parse(Checkout.root().resolve(module).resolve("pom.xml"));

        assertThat(elements(pom, "version"))
                .extracting(version -> version.getParentNode().getNodeName())
                .containsOnly("parent");
    }

    @Test
    void the_root_states_versions_as_properties() throws Exception {
        List<String> stated = elements(rootPom(), "version").stream()
                .filter(version -> !version.getParentNode().getNodeName().equals("project"))
                .map(Element::getTextContent)
                .toList();

        assertThat(stated).isNotEmpty().allMatch(version -> version.matches("\\$\\{[^}]+}"));
    }

    private static Document rootPom() throws Exception {
        return parse(Checkout.root().resolve("pom.xml"));
    }

    private static Document parse(Path pom) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(pom.toFile());
    }

    private static List<Element> elements(Document pom, String name) {
        NodeList found = pom.getElementsByTagName(name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            Node node = found.item(i);
            elements.add((Element) node);
        }
        return elements;
    }
}
