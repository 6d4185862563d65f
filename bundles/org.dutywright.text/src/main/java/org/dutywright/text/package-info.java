// SPDX-License-Identifier: EPL-2.0
/**
 * YAML texts with line and column marks and all their problems. {@link org.dutywright.text.TextTree} makes the nodes,
 * {@link org.dutywright.text.MapReader} reads the keys of one map with a {@link org.dutywright.text.ScalarParser} for
 * each single value, and {@link org.dutywright.text.Problems} gathers what is wrong. What a text means (quantities,
 * sensors, scenarios) is the business of the bundles that ask.
 *
 * <pre>{@code
 * Problems problems = new Problems(fileName);
 * MapReader map = MapReader.of(TextTree.parse(fileName, content), problems, "a thing");
 * Optional<String> name = map.required("name", ScalarParser.text(), "signal1");
 * Optional<Boolean> flag = map.optional("flag", ScalarParser.flag());
 * map.finish();
 * problems.throwIfAny();
 * }</pre>
 */
package org.dutywright.text;
