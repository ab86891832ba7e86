#include "app/run_program.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace tiepoint::test {
namespace {

/// Pointers to texts, ended by a null, as the system calls want them.
std::vector<char*> pointersTo(std::vector<std::string>& texts) {
    std::vector<char*> pointers;
    for (std::string& text : texts) pointers.push_back(text.data());
    pointers.push_back(nullptr);
    return pointers;
}

class Scratch {
public:
    Scratch() {
        std::string pattern = (std::filesystem::temp_directory_path() / "tiepoint-test-XXXXXX").string();
        if (mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no scratch folder");
        path_ = pattern;
    }
    ~Scratch() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

}  // namespace

const std::filesystem::path& scratchFolder() {
    static const Scratch scratch;
    return scratch.path();
}

Ran runProgram(const std::vector<std::string>& arguments, const std::vector<std::string>& environment) {
    return runTool(TIEPOINT_PROGRAM, arguments, environment);
}

Ran runTool(const std::string& tool, const std::vector<std::string>& arguments,
            const std::vector<std::string>& environment) {
    const std::string output = (scratchFolder() / "stdout").string(), error = (scratchFolder() / "stderr").string();
    std::vector<std::string> words{tool};
    words.insert(words.end(), arguments.begin(), arguments.end());
    std::vector<std::string> world{"PATH=/usr/bin:/bin", "LC_ALL=C.UTF-8", "HOME=" + scratchFolder().string()};
    world.insert(world.begin(), environment.begin(), environment.end());  // the first of two entries counts
    for (const char* name :
         {"ASAN_OPTIONS", "LSAN_OPTIONS", "UBSAN_OPTIONS"}) {  // a program with sanitizers keeps theirs
        if (const char* value = std::getenv(name)) world.push_back(std::string(name) + "=" + value);
    }

    posix_spawn_file_actions_t files;
    posix_spawn_file_actions_init(&files);
    posix_spawn_file_actions_addopen(&files, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    posix_spawn_file_actions_addopen(&files, STDOUT_FILENO, output.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
    posix_spawn_file_actions_addopen(&files, STDERR_FILENO, error.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
    pid_t process = 0;
    const int failed =
        posix_spawnp(&process, tool.c_str(), &files, nullptr, pointersTo(words).data(), pointersTo(world).data());
    posix_spawn_file_actions_destroy(&files);
    if (failed != 0) throw std::runtime_error("this could not be started: " + tool);

    int status = 0;
    waitpid(process, &status, 0);
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, readFile(output), readFile(error)};
}

std::string scratchFile(const std::string& name, const std::string& text) {
    const auto path = scratchFolder() / name;
    std::ofstream(path, std::ios::binary) << text;
    return path.string();
}

std::string readFile(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

std::string harbourBench(const std::string& name) {
    return TIEPOINT_SOURCE_DIR "/resources/benches/" + name + ".bench.json";
}

std::string clashingBench() {
    return scratchFile("clash.bench.json", R"({"format": "tiepoint-bench", "version": 1, "title": "Clash",
        "boards": [{"id": "A", "kind": "half", "at": [0, 0]}],
        "parts": [
          {"id": "PS1", "kind": "bench-supply", "leads": {"+": "A.top+3", "-": "A.bottom-3"}, "values": {"voltage": 5, "seriesResistance": 0, "currentLimit": 30}},
          {"id": "PS2", "kind": "bench-supply", "leads": {"+": "A.top+9", "-": "A.bottom-9"}, "values": {"voltage": 3, "seriesResistance": 0, "currentLimit": 30}}],
        "jumpers": []})");
}

int lineCount(const std::string& text) {
    const auto breaks = std::count(text.begin(), text.end(), '\n');
    return static_cast<int>(breaks) + (text.empty() || text.back() == '\n' ? 0 : 1);
}

}  // namespace tiepoint::test
