// What `cmake --install` lays into an empty prefix: the desktop's own validators accept it, and what was installed runs from there.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <sys/wait.h>

#include <algorithm>
#include <cstdlib>
#include <sstream>

namespace tiepoint::test {
namespace {

namespace fs = std::filesystem;

/// Runs a shell line and returns its exit code and all that it printed.
Ran runShell(const std::string& line) {
    const fs::path printed = scratchFolder() / "printed";
    const int status = std::system(("(" + line + ") >" + printed.string() + " 2>&1 </dev/null").c_str());
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, readFile(printed), {}};
}

class Install : public testing::Test {
protected:
    static void SetUpTestSuite() {
        const Ran installed = runShell("cmake --install " TIEPOINT_BUILD_DIR " --prefix " + prefix().string());
        ASSERT_EQ(installed.code, 0) << installed.output;
    }
    static fs::path prefix() { return scratchFolder() / "prefix"; }
    static std::string share(const std::string& path) { return (prefix() / "share" / path).string(); }

    /// A validator that finds nothing to say.
    static void expectValid(const std::string& line) {
        const Ran checked = runShell(line);
        EXPECT_EQ(checked.code, 0) << line << "\n" << checked.output;
    }
};

TEST_F(Install, LaysNothingButWhatItShould) {
    std::vector<std::string> tops;
    for (const auto& entry : fs::directory_iterator(prefix())) tops.push_back(entry.path().filename());
    std::sort(tops.begin(), tops.end());
    EXPECT_EQ(tops, (std::vector<std::string>{"bin", "share"}));
}

TEST_F(Install, DesktopEntryIsValid) {
    const std::string entry = share("applications/local.tiepoint.Tiepoint.desktop");
    expectValid("desktop-file-validate " + entry);
    const std::string text = readFile(entry);
    EXPECT_NE(text.find("Exec=tiepoint %f"), std::string::npos);
    EXPECT_TRUE(fs::exists(prefix() / "bin" / "tiepoint"));
    EXPECT_TRUE(fs::exists(share("icons/hicolor/scalable/apps/tiepoint.svg")));
    expectValid("xmllint --noout " + share("icons/hicolor/scalable/apps/tiepoint.svg"));
}

TEST_F(Install, AppStreamDataIsValid) {
    expectValid("appstreamcli validate --no-net " + share("metainfo/local.tiepoint.Tiepoint.metainfo.xml"));
}

TEST_F(Install, BenchesAreKnownByTheirNameAndByWhatTheyHold) {
    expectValid("update-mime-database " + share("mime"));
    const std::string magic = readFile(share("mime/globs2"));
    EXPECT_NE(magic.find("application/x-tiepoint-bench+json:*.bench.json"), std::string::npos) << magic;
}

TEST_F(Install, ManPageIsCleanAndNamesEveryCommand) {
    const Ran page = runShell("MANWIDTH=100 man --warnings=w -l -P cat " + share("man/man1/tiepoint.1"));
    EXPECT_EQ(page.code, 0) << page.output;
    EXPECT_EQ(page.output.find("warning"), std::string::npos) << page.output;
    const Ran help = runProgram({"--help"});
    const auto subcommands = help.output.find("Subcommands:");
    ASSERT_NE(subcommands, std::string::npos) << help.output;
    std::istringstream lines(help.output.substr(subcommands + std::string("Subcommands:\n").size()));
    int commands = 0;
    for (std::string line; std::getline(lines, line);) {
        std::istringstream words(line);
        std::string command;
        if (!line.starts_with("  ") || line[2] == ' ' || !(words >> command)) continue;
        ++commands;
        EXPECT_NE(page.output.find("\n       " + command), std::string::npos) << command << "\n" << page.output;
    }
    EXPECT_GE(commands, 8);
}

TEST_F(Install, WhatWasInstalledRunsFromThere) {
    const std::string program = (prefix() / "bin" / "tiepoint").string();
    const std::string bench = share("doc/tiepoint/examples/beacon-lamp.bench.json");
    const Ran solved = runShell("cd / && " + program + " solve " + bench + " --hold S1 --json");
    EXPECT_EQ(solved.code, 0) << solved.output;
    EXPECT_NE(solved.output.find("\"status\": \"solved\""), std::string::npos) << solved.output;
    EXPECT_EQ(runShell(program + " --version").output, "tiepoint " TIEPOINT_VERSION "\n");
    // The window comes up and stays until it is told to go.
    const Ran window = runShell("QT_QPA_PLATFORM=offscreen HOME=" + scratchFolder().string() + " timeout -s TERM 2 " +
                                program + " " + bench);
    EXPECT_EQ(window.code, 124) << window.output;
}

}  // namespace
}  // namespace tiepoint::test
