# SPDX-License-Identifier: EPL-2.0
# shellcheck shell=bash
# What the scripts here share. Sourced by run and long.
# shellcheck source=releng/lib.sh
. "$(dirname "${BASH_SOURCE[0]}")/../lib.sh"

# Leaves the folder with all jars in $jars and the JDK in $jdk.
build_benchmarks() {
  find_jdk
  lock
  find_maven
  say "building the benchmarks"
  rm -rf "$root"/releng/benchmark/target/classes "$root"/releng/benchmark/target/lib
  run_maven -q -Dmaven.test.skip=true -Dspotless.check.skip=true package -pl releng/benchmark -am >&2 \
    || fail 70 "the build failed (messages above), so nothing was started"
  # A copy, so that a later build never pulls the jars from under a benchmark that takes its time.
  jars=$(mktemp -d)
  trap 'rm -rf "$jars"' EXIT
  cp "$root"/releng/benchmark/target/lib/*.jar "$jars"
  unlock
}
