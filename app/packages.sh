# The distribution's packages that Tiepoint needs, and how to install what is missing. Sourced by app/run.sh and tests/run.sh.
BUILD_PACKAGES=(g++ cmake ninja-build ccache qt6-base-dev libqt6svg6-dev libgl1-mesa-dev libeigen3-dev libspdlog-dev
    libfmt-dev nlohmann-json3-dev libcli11-dev fonts-inter)
TEST_PACKAGES=(libgtest-dev libsundials-dev libboost-dev libboost-graph-dev libboost-math-dev xvfb xauth openbox xdotool
    desktop-file-utils appstream shared-mime-info libxml2-utils man-db groff-base
    poppler-utils librsvg2-bin)
BENCH_PACKAGES=(libsuitesparse-dev)
FORMAT_PACKAGES=(clang-format-14)
TIDY_PACKAGES=(clang clang-tidy-14)
FUZZ_PACKAGES=(clang libclang-rt-14-dev)

# How far a build is: its share, and the seconds that it has taken.
export NINJA_STATUS="[%p of %t steps, %es] "

# step NUMBER OF WORDS: says which step of a script begins.
step() {
    echo "== $1 of $2: $3"
}

# install_missing NAME...: installs those that are not installed; asks for root rights only then.
install_missing() {
    local missing=() name
    for name in "$@"; do
        dpkg-query -W -f='${Status}' "$name" 2>/dev/null | grep -q 'ok installed' || missing+=("$name")
    done
    if [ ${#missing[@]} -eq 0 ]; then
        echo "Nothing to install."
        return 0
    fi
    echo "Installing ${#missing[@]} packages and what they need: ${missing[*]}"
    local sudo=()
    [ "$(id -u)" -eq 0 ] || sudo=(sudo)
    "${sudo[@]}" apt-get update -qq
    # One line for each package that is unpacked: enough to see that it goes on.
    "${sudo[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "${missing[@]}" |
        sed -un 's/^Unpacking \([^ ]*\).*/  \1/p; s/^Need to get/  Need to get/p'
}
