// SPDX-License-Identifier: EPL-2.0
/** Benchmarks: what reading, storing, drawing and measuring cost. Run by {@code releng/benchmark/run}, never shipped. */
package org.dutywright.benchmark;
