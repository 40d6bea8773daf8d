#!/bin/sh
# Builds Wattledger from these sources and puts the command "wattledger" on the path of the person who runs this.
#
#   sh analysis-cli/install.sh            builds and installs, or replaces what an earlier run installed
#   sh analysis-cli/install.sh --remove   takes away what this script installed
#
# It asks nothing and needs no administrator. It writes to ~/.local/share/wattledger and ~/.local/bin/wattledger; the
# build writes to the folders "target" here, and Maven keeps what it fetches in ~/.m2.
set -eu
unset CDPATH

least_java=17
root=$(cd -- "$(dirname -- "$0")/.." && pwd)

say() { printf '%s\n' "$*"; }
stop() {
  printf 'install.sh: %s\n' "$1" >&2
  exit 1
}

case ${HOME-} in
  /*) ;;
  *) stop "HOME is not set to a folder; set it to your home folder" ;;
esac
home=$HOME/.local/share/wattledger
link=$HOME/.local/bin/wattledger

# What lies at these two places is touched only when it is ours.
is_ours() { [ -f "$home/bin/wattledger" ] && [ -d "$home/lib" ]; }
is_our_link() { [ -h "$link" ] && [ "$(readlink -- "$link")" = "$home/bin/wattledger" ]; }
require_ours() {
  if [ -e "$home" ] && ! is_ours; then
    stop "$home is there, but not from this script; move it away"
  fi
  if { [ -e "$link" ] || [ -h "$link" ]; } && ! is_our_link; then
    stop "$link is there, but not from this script; move it away"
  fi
}

remove() {
  require_ours
  if ! is_ours && ! is_our_link; then
    say "Nothing to remove: Wattledger is not installed for you."
    return
  fi
  rm -f -- "$link"
  rm -rf -- "$home"
  say "Removed $link and $home."
  # The launcher keeps an archive of its classes and the library of SQLite there, so that it starts faster.
  cache=${XDG_CACHE_HOME:-$HOME/.cache}/wattledger
  if [ -d "$cache" ]; then
    rm -f -- "$cache"/classes-*.jsa "$cache"/sqlite-* "$cache"/new-*
    rmdir -- "$cache" 2>/dev/null || true
    say "Removed what the launcher kept in $cache."
  fi
}

# How this system installs packages, for the messages.
advice() {
  if command -v apt-get >/dev/null 2>&1; then
    say "sudo apt-get install $1"
  elif command -v dnf >/dev/null 2>&1; then
    say "sudo dnf install $2"
  elif command -v pacman >/dev/null 2>&1; then
    say "sudo pacman -S $3"
  elif command -v brew >/dev/null 2>&1; then
    say "brew install $4"
  else
    say "$5"
  fi
}

require_tools() {
  jdk_advice=$(advice default-jdk-headless java-latest-openjdk-devel jdk-openjdk openjdk \
    "the package of a JDK for your system, for instance from https://adoptium.net")
  maven_advice=$(advice maven maven maven maven "the package of Maven for your system")
  if [ -n "${JAVA_HOME-}" ]; then
    javac=$JAVA_HOME/bin/javac
    [ -x "$javac" ] || stop "JAVA_HOME names $JAVA_HOME, which holds no JDK; correct it or unset it"
  else
    javac=$(command -v javac) || stop "no JDK found; install one of version $least_java or later: $jdk_advice"
  fi
  # "javac 17.0.15", and "javac 1.8.0_292" of old ones.
  version=$("$javac" -version 2>&1 | sed -n 's/^javac \([0-9]*\).*/\1/p')
  if [ "${version:-0}" -lt "$least_java" ]; then
    stop "$javac is of version ${version:-unknown}; install a JDK of version $least_java or later: $jdk_advice"
  fi
  command -v mvn >/dev/null 2>&1 || stop "no Maven found, which builds Java programs; install it: $maven_advice"
}

install() {
  require_ours
  require_tools
  say "Building. The first time fetches some 250 MB and takes some minutes. It also fetches the FIT SDK: by that you accept"
  say "its licence, https://developer.garmin.com/fit/download/"
  (cd -- "$root" && mvn -B -q -Dmaven.test.skip=true package) \
    || stop "the build failed; its messages stand above. Is this computer online?"
  built=$root/analysis-cli/target/wattledger
  [ -x "$built/bin/wattledger" ] || stop "the build left no $built/bin/wattledger"

  mkdir -p -- "$HOME/.local/share" "$HOME/.local/bin"
  new=$home.new-$$
  trap 'rm -rf -- "$new"' EXIT
  cp -R -- "$built" "$new"
  rm -rf -- "$home"
  mv -- "$new" "$home"
  ln -sf -- "$home/bin/wattledger" "$link"

  say "Installed $("$link" --version) as $link; its files are in $home."
  case :$PATH: in
    *:"$HOME/.local/bin":*) say "Try: wattledger $root/sample-rides/over-hard-start.fit" ;;
    *)
      say "Your shell does not look into ~/.local/bin yet. Add this line to ~/.profile (zsh: ~/.zprofile) and log in again:"
      say "  export PATH=\"\$HOME/.local/bin:\$PATH\""
      say "Or try now: $link $root/sample-rides/over-hard-start.fit"
      ;;
  esac
  say "What was installed is for this computer: the licence of the FIT SDK in it forbids passing it on. Pass on the sources."
  say "To remove it: sh $root/analysis-cli/install.sh --remove"
}

case ${1-} in
  '') install ;;
  --remove) remove ;;
  *) stop "expected nothing or --remove, got '$1'" ;;
esac
