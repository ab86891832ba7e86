// A fuzz program for one format, whose name the build gives. libFuzzer makes up the bytes; a broken promise ends the program, and the bytes
// that did it are kept. With --samples FOLDER it writes the format's good texts there and ends.

#include "fuzz/formats.h"

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>
#include <string_view>

namespace {

using namespace tiepoint::fuzz;

void writeSamples(const std::string& folder) {
    int number = 0;
    for (const std::string& text : findFormat(TIEPOINT_FUZZ_FORMAT).samples())
        std::ofstream(folder + "/sample" + std::to_string(++number), std::ios::binary) << text;
}

}  // namespace

extern "C" int LLVMFuzzerInitialize(int* argc, char*** argv) {
    if (*argc != 3 || std::string_view((*argv)[1]) != "--samples") return 0;
    writeSamples((*argv)[2]);
    std::exit(0);
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const Format& format = findFormat(TIEPOINT_FUZZ_FORMAT);
    try {
        format.take({reinterpret_cast<const char*>(data), size});
    } catch (const BrokenPromise& broken) {
        std::fprintf(stderr, "Broken: %s\n", broken.what());
        std::abort();
    }
    return 0;
}
