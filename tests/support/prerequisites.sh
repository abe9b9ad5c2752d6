#!/usr/bin/env bash
# What the tests need from the system: a Chromium and the mosquitto broker with its clients. As root on a Debian-like system it installs
# what is missing; elsewhere it names what is missing and exits 1.
set -u
root=$(cd "$(dirname "$0")/../.." && pwd)
# Debian keeps the broker where only root looks.
PATH="$PATH:/usr/sbin:/usr/local/sbin"

has() { command -v "$1" >/dev/null 2>&1; }

has_browser() {
  has chromium || has chromium-browser || has google-chrome || has google-chrome-stable ||
    { [ "$(uname -sm)" = 'Linux x86_64' ] && [ -d "$root/node_modules/@sparticuz/chromium/bin" ]; }
}

find_missing() {
  missing=()
  has_browser || missing+=(chromium)
  has mosquitto || missing+=(mosquitto)
  has mosquitto_pub || missing+=(mosquitto-clients)
}

find_missing
[ ${#missing[@]} -eq 0 ] && exit 0

# Debian starts a broker as soon as it is installed, on the port that `npm start` wants: not for this installation.
install_quietly() {
  local policy=/usr/sbin/policy-rc.d own=no
  [ -e "$policy" ] || { printf '#!/bin/sh\nexit 101\n' >"$policy" && chmod +x "$policy" && own=yes; }
  apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}"
  [ "$own" = no ] || rm -f "$policy"
}

if [ "$(id -u)" -eq 0 ] && has apt-get; then
  install_quietly >&2
  find_missing
  [ ${#missing[@]} -eq 0 ] && exit 0
fi

echo "The tests need ${missing[*]}: install it (on Debian: apt-get install ${missing[*]}) and run them again." >&2
exit 1
