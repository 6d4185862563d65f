# SPDX-License-Identifier: EPL-2.0
# shellcheck shell=bash
# What the start scripts share: the JDK, Maven, the lock and the product. Sourced by run, test and dutywright.
# Everything said here goes to standard error, so that standard output carries only what the product prints.

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd -P)
tools="$root/.tools"
wanted_java=25

say() { printf 'dutywright: %s\n' "$*" >&2; }

# fail STATUS MESSAGE
fail() {
  say "$2"
  exit "$1"
}

# A version that stands in the root pom, by the name of its property there.
version_of() {
  sed -n "s:.*<$1>\(.*\)</$1>.*:\1:p" "$root/pom.xml"
}

# apt_install PACKAGE...: installs the first of them that apt offers; false where apt or the right to use it is missing.
apt_install() {
  if [ "$(id -u)" != 0 ] || ! command -v apt-get >/dev/null; then
    return 1
  fi
  apt-get update -q >&2 || true
  local package
  for package in "$@"; do
    apt-cache show "$package" >/dev/null 2>&1 || continue
    say "installing $package"
    DEBIAN_FRONTEND=noninteractive apt-get install -y -q "$package" </dev/null >&2 && return 0
  done
  return 1
}

# The folder of the JDK whose java is on the PATH. Nothing is started here: starting a Java costs more than all the rest.
jdk_on_path() {
  local java
  java=$(command -v java) || return 0
  java=$(readlink -f "$java" 2>/dev/null || printf '%s' "$java")
  dirname "$(dirname "$java")"
}

is_wanted_jdk() {
  [ -x "$1/bin/javac" ] && [ -r "$1/release" ] || return 1
  local version
  version=$(sed -n 's/^JAVA_VERSION="\([0-9]*\).*/\1/p' "$1/release")
  [ -n "$version" ] && [ "$version" -ge "$wanted_java" ]
}

look_for_jdk() {
  local home
  for home in "${JAVA_HOME:-}" "$(jdk_on_path)" /usr/lib/jvm/* /opt/* \
    /Library/Java/JavaVirtualMachines/*/Contents/Home "${HOME:-}"/.sdkman/candidates/java/*; do
    if is_wanted_jdk "$home"; then
      jdk=$home
      return 0
    fi
  done
  return 1
}

# Leaves the folder of a JDK in $jdk.
find_jdk() {
  look_for_jdk && return
  if apt_install "openjdk-$wanted_java-jdk-headless" "temurin-$wanted_java-jdk"; then
    look_for_jdk && return
  fi
  fail 69 "no JDK $wanted_java or newer at JAVA_HOME, on the PATH or in the usual folders: install one (openjdk-$wanted_java-jdk or temurin-$wanted_java-jdk) and try again"
}

# One build at a time in a checkout. The kernel holds the lock and drops it with the process, so none is ever stale.
lock() {
  mkdir -p "$tools"
  exec 9>"$tools/lock"
  if command -v flock >/dev/null; then
    if ! flock -n 9; then
      say "waiting for another build in this checkout"
      flock 9
    fi
  elif command -v perl >/dev/null; then
    perl -MFcntl=:flock -e 'open(my $f, ">&=", 9) or die; flock($f, LOCK_EX) or die'
  else
    fail 69 "neither flock nor perl is on the PATH, one is needed to build safely: install util-linux"
  fi
  rm -rf "$tools"/fresh.* # what a killed build left
}

unlock() { exec 9>&-; }

# Leaves the command of the project's own Maven in $maven, fetched once by any Maven at hand. Call with the lock held.
find_maven() {
  local version name fresh apart
  version=$(version_of build-maven.version)
  name="apache-maven-$version"
  maven="$tools/$name/bin/mvn"
  [ ! -x "$maven" ] || return 0
  command -v mvn >/dev/null || apt_install maven \
    || fail 69 "no mvn on the PATH to fetch Maven $version with: install Maven 3.6 or newer and try again"
  say "fetching Maven $version into .tools"
  fresh=$(mktemp -d "$tools/fresh.XXXXXX")
  # From an empty folder, so that no Maven reads the project's .mvn here.
  apart=$(mktemp -d)
  # The option keeps a new Java from warning of what an old Maven does.
  (cd "$apart" && JAVA_HOME=$jdk MAVEN_OPTS="${MAVEN_OPTS:-} --sun-misc-unsafe-memory-access=allow" mvn -B -ntp -q \
    "org.apache.maven.plugins:maven-dependency-plugin:$(version_of dependency-plugin.version):unpack" \
    "-Dartifact=org.apache.maven:apache-maven:$version:zip:bin" "-DoutputDirectory=$fresh") </dev/null >&2 9>&- \
    || fail 69 "Maven $version could not be fetched (messages above): check the network and the Maven settings, then try again"
  take_settings "$fresh/$name"
  mv "$fresh/$name" "$tools/$name"
  rm -rf "$fresh" "$apart"
}

# Mirrors and proxies that this machine's Maven knows hold for ours as well.
take_settings() {
  local home
  home=$(cd / && JAVA_HOME=$jdk mvn -B -v 2>/dev/null | sed -n 's/^Maven home: //p') || return 0
  [ ! -r "$home/conf/settings.xml" ] || cp "$home/conf/settings.xml" "$1/conf/settings.xml"
}

screen=() # a command that brings a screen along, where one is needed

# run_maven ARGUMENT...: through the command in screen, if any.
run_maven() {
  (cd "$root" && JAVA_HOME=$jdk ${screen[@]+"${screen[@]}"} "$maven" -B -ntp "$@") </dev/null 9>&-
}

# A number that changes with any of the files named on standard input: by content, for times mean nothing after a checkout.
sum_of_files() { LC_ALL=C sort -z | xargs -0 cksum | cksum | tr ' ' '-'; }

# What the command line is made of. The bundles of the workbench bring their manifests along, and are no part of it.
source_sum() {
  (cd "$root" && find pom.xml .mvn releng/lib.sh bundles \
    \( -name target -o -path 'bundles/*/src/test' -o -path 'bundles/org.dutywright.workbench*' \) -prune \
    -o -type f \( -path 'bundles/*/src/*' -o ! -path 'bundles/*' -o -name pom.xml \) -print0 | sum_of_files)
}

# What the workbench is made of.
workbench_sum() {
  (cd "$root" && find pom.xml .mvn releng/lib.sh releng/platform releng/product bundles features \
    \( -name target -o -path 'bundles/*/src/test' -o -path 'bundles/*.tests' \) -prune -o -type f -print0 | sum_of_files)
}

# store_product SUM: keeps the jars just built under the sum of their sources. A copy, so that a build never pulls the
# jars from under a command that runs. Call with the lock held.
store_product() {
  local built="$root/bundles/org.dutywright.cli/target/dutywright/lib" fresh
  [ -d "$built" ] || fail 70 "the build made no $built"
  fresh=$(mktemp -d "$tools/fresh.XXXXXX")
  cp "$built"/*.jar "$fresh"
  chmod 755 "$fresh"
  mkdir -p "$tools/product"
  rm -rf "$tools/product/$1"
  mv "$fresh" "$tools/product/$1"
  # The names are our own sums; the last few stay for commands still running from them.
  # shellcheck disable=SC2012
  (cd "$tools/product" && ls -1t | tail -n +5 | xargs rm -rf)
}

# build_product SUM. What was built before goes first, for Maven would leave what has no source any more in the jars.
build_product() {
  say "building the product (the first time fetches its libraries, which takes some minutes)"
  rm -rf "$root"/bundles/*/target/classes "$root"/bundles/*/target/dutywright
  run_maven -q -Dmaven.test.skip=true -Dspotless.check.skip=true package -pl bundles/org.dutywright.cli -am >&2 \
    || fail 70 "the build failed (messages above), so nothing was started"
  store_product "$1"
}

# Leaves the folder with the jars made of the present sources in $product; builds where there is none yet.
find_product() {
  local sum
  sum=$(source_sum)
  product="$tools/product/$sum"
  [ ! -d "$product" ] || return 0
  lock
  if [ ! -d "$product" ]; then
    find_maven
    build_product "$sum"
  fi
  unlock
}

# start ARGUMENT...: becomes the product, so that signals reach it and its exit status is ours.
start() {
  local options=()
  read -r -a options <<<"${DUTYWRIGHT_JAVA_OPTS:-}"
  exec "$jdk/bin/java" -Xmx1g --enable-native-access=ALL-UNNAMED ${options[@]+"${options[@]}"} \
    -cp "$product/*" org.dutywright.cli.Main "$@"
}

# Where the build puts the product for this system.
workbench_folder() {
  local products="$root/releng/product/target/products/org.dutywright.workbench.product"
  case "$(uname -s)-$(uname -m)" in
    Linux-x86_64) echo "$products/linux/gtk/x86_64" ;;
    Darwin-arm64) echo "$products/macosx/cocoa/aarch64/Eclipse.app/Contents/Eclipse" ;;
    *) fail 69 "there is no workbench for $(uname -s) on $(uname -m), only the command line" ;;
  esac
}

# build_workbench SUM: builds without tests and archives and keeps the product under the sum of its sources.
build_workbench() {
  local fresh built
  built=$(workbench_folder)
  say "building the workbench (the first time fetches the Eclipse platform, which takes some minutes)"
  rm -rf "$root"/bundles/*/target/classes "$root"/bundles/*/target/dutywright "$root"/releng/product/target
  run_maven -q -Dworkbench -Dmaven.test.skip=true -Dspotless.check.skip=true -Darchives.skip=true package -am -pl \
    "$(cd "$root" && printf '%s,' bundles/org.dutywright.workbench* features/* | sed 's:bundles/[^,]*\.tests,::g')releng/product" >&2 \
    || fail 70 "the build failed (messages above), so nothing was started"
  fresh=$(mktemp -d "$tools/fresh.XXXXXX")
  cp -R "$built/." "$fresh"
  cp "$root/releng/product/start/dutywright" "$fresh"
  cp "$root/releng/product/start/logging.properties" "$fresh/configuration"
  chmod 755 "$fresh"
  mkdir -p "$tools/workbench"
  rm -rf "$tools/workbench/$1"
  mv "$fresh" "$tools/workbench/$1"
  # As above: the one before stays for a window still open.
  # shellcheck disable=SC2012
  (cd "$tools/workbench" && ls -1t | tail -n +3 | xargs rm -rf)
}

# start_workbench ARGUMENT...: becomes the workbench made of the present sources, built where there is none yet.
start_workbench() {
  local sum
  sum=$(workbench_sum)
  if [ ! -d "$tools/workbench/$sum" ]; then
    lock
    if [ ! -d "$tools/workbench/$sum" ]; then
      find_maven
      build_workbench "$sum"
    fi
    unlock
  fi
  export JAVA_HOME=$jdk DUTYWRIGHT_WORKSPACE="${DUTYWRIGHT_WORKSPACE:-$root/work/workspace}"
  exec "$tools/workbench/$sum/dutywright" workbench "$@"
}
