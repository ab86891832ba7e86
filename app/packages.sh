# The distribution's packages that Tiepoint needs, and how to install what is missing. Sourced by app/run.sh and tests/run.sh.
BUILD_PACKAGES=(g++ cmake ninja-build ccache qt6-base-dev libqt6svg6-dev libgl1-mesa-dev libeigen3-dev libspdlog-dev
    libfmt-dev nlohmann-json3-dev libcli11-dev fonts-inter)
TEST_PACKAGES=(libgtest-dev libboost-dev libboost-graph-dev libboost-math-dev xvfb xauth openbox xdotool)
BENCH_PACKAGES=(libsuitesparse-dev)

# install_missing NAME...: installs those that are not installed; asks for root rights only then.
install_missing() {
    local missing=() name
    for name in "$@"; do
        dpkg-query -W -f='${Status}' "$name" 2>/dev/null | grep -q 'ok installed' || missing+=("$name")
    done
    [ ${#missing[@]} -eq 0 ] && return 0
    echo "Installing: ${missing[*]}"
    local sudo=()
    [ "$(id -u)" -eq 0 ] || sudo=(sudo)
    "${sudo[@]}" apt-get update -qq
    "${sudo[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}"
}
