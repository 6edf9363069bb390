// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command.h"
#include "storage/member_store.h"

#include <fmt/format.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

namespace levelbar::cli {

namespace {

namespace fs = std::filesystem;

constexpr int kNotStarted = 127; // what a child exits with when its program cannot be run

// The desktop program lies where this one does, wherever that is.
fs::path desktopProgram()
{
    std::error_code error;
    const fs::path self = fs::read_symlink("/proc/self/exe", error);
    return error ? fs::path("levelbar") : self.parent_path() / "levelbar";
}

// This environment, without a window and without Qt's own messages.
std::vector<std::string> offscreenEnvironment()
{
    std::vector<std::string> all = {"QT_QPA_PLATFORM=offscreen",
                                    "QT_LOGGING_RULES=*.debug=false;*.info=false;*.warning=false"};
    for (char** entry = environ; *entry != nullptr; ++entry) {
        if (std::strncmp(*entry, "QT_QPA_PLATFORM=", 16) != 0 &&
            std::strncmp(*entry, "QT_LOGGING_RULES=", 17) != 0) {
            all.emplace_back(*entry);
        }
    }
    return all;
}

std::vector<char*> pointersTo(std::vector<std::string>& words)
{
    std::vector<char*> pointers;
    pointers.reserve(words.size() + 1);
    for (std::string& word : words) {
        pointers.push_back(word.data());
    }
    pointers.push_back(nullptr);
    return pointers;
}

// The exit status; kNotStarted when there is no such program, -1 when it was ended by a signal.
int runAndWait(const fs::path& program, std::vector<std::string> words)
{
    words.insert(words.begin(), program.string());
    std::vector<std::string> environment = offscreenEnvironment();
    pid_t child = 0;
    if (::posix_spawn(&child,
                      program.c_str(),
                      nullptr,
                      nullptr,
                      pointersTo(words).data(),
                      pointersTo(environment).data()) != 0) {
        return kNotStarted;
    }
    int status = 0;
    while (::waitpid(child, &status, 0) < 0) {
        if (errno != EINTR) {
            return -1;
        }
    }
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

} // namespace

int runReport(const ReportOptions& options, const Clock& clock)
{
    {
        const storage::Logbook logbook = openForReading(options.logbook, clock);
        if (!storage::MemberStore(logbook).find(options.member)) {
            return atFault(options.logbook,
                           sentence(Fault{FaultCode::UnknownMember, {excerpt(options.member)}}));
        }
    }
    std::error_code ignored;
    if (fs::equivalent(options.logbook, options.pdf, ignored)) {
        return atFault(options.pdf, "is the logbook itself; name another file");
    }
    // "=" and "--": an id or a name may begin with a dash.
    std::vector<std::string> words = {
        "--report-member=" + options.member, "--pdf=" + options.pdf, "--paper=" + options.paper};
    if (!options.on.empty()) {
        words.push_back("--report-on=" + options.on);
    }
    words.insert(words.end(), {"--", options.logbook});
    const fs::path program = desktopProgram();
    const int status = runAndWait(program, words);
    if (status == kNotStarted) {
        fmt::print(stderr, "{} cannot be started, and it paints the page.\n", program.string());
        return kLogbookTrouble;
    }
    if (status < 0) {
        fmt::print(stderr, "{} ended early; nothing was written.\n", program.string());
        return kLogbookTrouble;
    }
    if (status == kDone) {
        fmt::print("Wrote {}.\n", options.pdf);
    }
    return status;
}

} // namespace levelbar::cli
