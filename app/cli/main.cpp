// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command.h"
#include "storage/store_error.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <chrono>
#include <cstdio>
#include <ctime>
#include <functional>

namespace {

using namespace levelbar;
using namespace levelbar::cli;

Clock readClock()
{
    const auto now = std::chrono::system_clock::now().time_since_epoch();
    const auto milliseconds = std::chrono::duration_cast<std::chrono::milliseconds>(now).count();
    const std::time_t seconds = milliseconds / 1000;
    std::tm local{};
    localtime_r(&seconds, &local);
    const auto today = dayOf({local.tm_year + 1900, local.tm_mon + 1, local.tm_mday});
    return {Moment{milliseconds}, today.value_or(Day{})};
}

int statusOf(storage::StoreErrorKind kind)
{
    return kind == storage::StoreErrorKind::Exists ? kInputAtFault : kLogbookTrouble;
}

// One subcommand: its words, what it takes, and what runs.
class Commands {
public:
    explicit Commands(CLI::App& app)
        : m_app(app)
    {
    }

    CLI::App* add(const char* name, const char* what, std::function<int()> run)
    {
        CLI::App* command = m_app.add_subcommand(name, what);
        command->callback([this, run = std::move(run)] { m_status = run(); });
        return command;
    }

    [[nodiscard]] int status() const { return m_status; }

private:
    CLI::App& m_app;
    int m_status = kDone;
};

std::string checkDate(const std::string& text)
{
    const auto day = parseDay(text);
    return day ? std::string() : sentence(day.error());
}

// What the command line says, filled in by CLI11.
struct Options {
    NewOptions fresh;
    ImportOptions import;
    ReviewOptions review;
    CheckOptions check;
    std::string on;
    std::string logbook;
    std::string other; // a folder, a file or a person's id
};

void addLogbook(CLI::App* command, std::string& logbook, const char* what)
{
    command->add_option("LOGBOOK", logbook, what)->required();
}

void addWriting(Commands& commands, Options& o, const Clock& clock)
{
    CLI::App* command =
        commands.add("new", "Make an empty logbook", [&] { return runNew(o.fresh, clock); });
    addLogbook(command, o.fresh.logbook, "The file to make");
    command->add_flag("--demo", o.fresh.demo, "With the invented gym in it");

    command = commands.add("import", "Take people, sets and tests in from CSV", [&] {
        return runImport(o.import, clock);
    });
    addLogbook(command, o.import.logbook, "The logbook to write");
    command->add_option("--members", o.import.members, "members.csv");
    command->add_option("--sets", o.import.sets, "sets.csv");
    command->add_option("--tests", o.import.tests, "tests.csv");
    command->add_flag("--add-exercises", o.import.addExercises, "Add exercises that are not known");
    command->add_flag("--update", o.import.update, "Let other values replace what is stored");
    command->add_flag("--dry-run", o.import.dryRun, "Say what would happen and write nothing");
    command->add_flag("--json", o.import.json, "Print JSON");

    command = commands.add("erase", "Remove a person for good, history included", [&] {
        return runErase(o.logbook, o.other, clock);
    });
    addLogbook(command, o.logbook, "The logbook to write");
    command->add_option("--member", o.other, "The person's id")->required();
}

void addReading(Commands& commands, Options& o, const Clock& clock)
{
    CLI::App* command = commands.add("review", "Who to look at, strength, trends and sides", [&] {
        if (!o.on.empty()) {
            o.review.on = parseDay(o.on).value();
        }
        return runReview(o.review, clock);
    });
    addLogbook(command, o.review.logbook, "The logbook to read");
    command->add_option("--on", o.on, "As it stood on this date (default: today)")
        ->check(checkDate);
    command->add_option("--member", o.review.members, "Print this person only (may be repeated)")
        ->expected(1)
        ->take_all();
    command->add_flag("--json", o.review.json, "Print JSON");

    command = commands.add("check", "Is the file sound?", [&] { return runCheck(o.check, clock); });
    addLogbook(command, o.check.logbook, "The logbook to read");
    command->add_flag("--json", o.check.json, "Print JSON");
}

void addCopying(Commands& commands, Options& o, const Clock& clock)
{
    CLI::App* command = commands.add("export", "Write members.csv, sets.csv and tests.csv", [&] {
        return runExport(o.logbook, o.other, clock);
    });
    addLogbook(command, o.logbook, "The logbook to read");
    command->add_option("DIR", o.other, "The folder to write into")->required();

    command = commands.add("backup", "Copy the logbook as it stands, also while it is in use", [&] {
        return runBackup(o.logbook, o.other, clock);
    });
    addLogbook(command, o.logbook, "The logbook to read");
    command->add_option("FILE", o.other, "The copy to make")->required();

    command = commands.add("restore", "Make a logbook from a backup", [&] {
        return runRestore(o.other, o.logbook, clock);
    });
    command->add_option("FILE", o.other, "The backup to read")->required();
    addLogbook(command, o.logbook, "The logbook to make");
}

} // namespace

int main(int argc, char** argv)
try {
    const Clock clock = readClock();
    CLI::App app("The engine and the store of Levelbar without a window.", "levelbar-cli");
    app.set_version_flag("--version", "levelbar-cli 0.1.0");
    app.require_subcommand(1);
    Commands commands(app);
    Options options;
    addWriting(commands, options, clock);
    addReading(commands, options, clock);
    addCopying(commands, options, clock);
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        return app.exit(error) == 0 ? kDone : kWrongUsage;
    }
    return commands.status();

} catch (const levelbar::storage::StoreError& error) {
    fmt::print(stderr, "{}\n", error.what());
    return statusOf(error.kind());

} catch (const std::exception& error) {

    fmt::print(stderr, "Something went wrong inside levelbar-cli: {}\n", error.what());
    return levelbar::cli::kLogbookTrouble;
}
