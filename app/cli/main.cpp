// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command.h"
#include "core/base/utf8.h"
#include "core/gym/rack_sharing.h"
#include "core/plan/target.h"
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
    SidesOptions sides;
    CheckOptions check;
    HowRightOptions howRight;
    std::string from;
    std::string to;
    GymOptions gym;
    std::string effort;
    ReportOptions report;
    TargetOptions target;
    std::string side;
    std::string reserve;
    ShareRacksOptions racks;
    std::string bar = "20";
    std::vector<std::string> plates;
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

    command = commands.add("gym", "What the gym owns, and how effort is shown", [&] {
        if (!o.effort.empty()) {
            o.gym.effort = o.effort == "rpe" ? EffortScale::Rpe : EffortScale::Reserve;
        }
        return runGym(o.gym, clock);
    });
    addLogbook(command, o.gym.logbook, "The logbook to read, or to write with --kit or --effort");
    command->add_option("--kit", o.gym.kit, "CSV that replaces it: kind,mass,unit,count,name");
    command->add_option("--effort", o.effort, "Show effort as reps in reserve, or on the RPE scale")
        ->check(CLI::IsMember({"reserve", "rpe"}));
    command->add_flag("--json", o.gym.json, "Print JSON");

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

    command = commands.add("sides", "Left and right: lists, one person, or one measure", [&] {
        if (!o.on.empty()) {
            o.sides.on = parseDay(o.on).value();
        }
        return runSides(o.sides, clock);
    });
    addLogbook(command, o.sides.logbook, "The logbook to read");
    CLI::Option* member =
        command->add_option("--member", o.sides.member, "This person: measures and what to do");
    command->add_option("--measure", o.sides.measure, "How steady and reliable this measure is")
        ->excludes(member);
    command->add_option("--on", o.on, "As it stood on this date (default: today)")
        ->check(checkDate);
    command->add_flag("--json", o.sides.json, "Print JSON");
    command = commands.add("how-right", "Ranges given before, beside what was then done", [&] {
        if (!o.from.empty()) {
            o.howRight.first = parseDay(o.from).value();
        }
        if (!o.to.empty()) {
            o.howRight.last = parseDay(o.to).value();
        }
        return runHowRight(o.howRight, clock);
    });
    addLogbook(command, o.howRight.logbook, "The logbook to read");
    command->add_option("--from", o.from, "The first day (default: eight weeks)")->check(checkDate);
    command->add_option("--to", o.to, "The last day (default: today)")->check(checkDate);
    command->add_flag("--json", o.howRight.json, "Print JSON");

    command = commands.add("check", "Is the file sound?", [&] { return runCheck(o.check, clock); });
    addLogbook(command, o.check.logbook, "The logbook to read");
    command->add_flag("--json", o.check.json, "Print JSON");
}

template <typename T>
std::function<std::string(const std::string&)> checkedBy(Result<T> (*parse)(std::string_view))
{
    return [parse](const std::string& text) {
        const auto value = parse(text);
        return value ? std::string() : sentence(value.error());
    };
}

void addTarget(Commands& commands, Options& o, const Clock& clock)
{
    CLI::App* command = commands.add("target", "The load to aim at, and why", [&] {
        if (!o.on.empty()) {
            o.target.on = parseDay(o.on).value();
        }
        if (!o.side.empty()) {
            o.target.side = parseSide(o.side).value();
        }
        if (!o.reserve.empty()) {
            o.target.reserve = parseReserve(o.reserve).value();
        }
        return runTarget(o.target, clock);
    });
    addLogbook(command, o.target.logbook, "The logbook to read");
    command->add_option("--member", o.target.member, "The person's id")->required();
    command->add_option("--exercise", o.target.exercise, "The exercise's name")->required();
    command->add_option("--side", o.side, "left, right or both (default: both, or the weaker)")
        ->check(checkedBy(&parseSide));
    command->add_option("--reps", o.target.reps, "Reps to aim at, 1 to 30")
        ->required()
        ->check(CLI::Range(1, kMostTargetReps));
    command->add_option("--rir", o.reserve, "Reps to leave in reserve, 0 to 10 (default: 2)")
        ->check([](const std::string& text) {
            const auto reserve = parseReserve(text);
            const bool isInside = reserve && reserve->tenths <= 10 * kMostTargetReserve;
            const Fault outside{FaultCode::OutOfRange,
                                {text, "0", std::to_string(kMostTargetReserve)}};
            return isInside ? std::string() : sentence(outside);
        });
    command->add_option("--on", o.on, "As it stood on this date (default: today)")
        ->check(checkDate);
    command->add_flag("--json", o.target.json, "Print JSON");
}

void addReport(Commands& commands, Options& o, const Clock& clock)
{
    CLI::App* command = commands.add(
        "report", "A person's printed page as PDF", [&] { return runReport(o.report, clock); });
    addLogbook(command, o.report.logbook, "The logbook to read");
    command->add_option("--member", o.report.member, "The person's id")->required();
    command->add_option("--pdf", o.report.pdf, "The file to write")->required();
    command->add_option("--on", o.report.on, "As it stood on this date (default: today)")
        ->check(checkDate);
    command->add_option("--paper", o.report.paper, "a4 or letter (default: a4)")
        ->check(CLI::IsMember({"a4", "letter"}));
}

std::string checkMass(const std::string& text)
{
    const auto mass = parseMass(text, MassUnit::Kilogram);
    return mass ? std::string() : sentence(mass.error());
}

std::string checkPlate(const std::string& text)
{
    const auto mass = parseMass(text, MassUnit::Kilogram);
    const bool isNothing = mass && mass->thousandths() == 0;
    return isNothing ? "a plate of 0 kg is none" : checkMass(text);
}

void addRacks(Commands& commands, Options& o)
{
    CLI::App* command =
        commands.add("share-racks", "Share lifters among racks with few plate changes", [&] {
            o.racks.bar = parseMass(o.bar, MassUnit::Kilogram).value();
            for (const std::string& plate : o.plates) {
                o.racks.plates.push_back(parseMass(plate, MassUnit::Kilogram).value());
            }
            return runShareRacks(o.racks);
        });
    command->add_option("--lifters", o.racks.lifters, "CSV: member_id,load_kg,hook_hole")
        ->required();
    command->add_option("--racks", o.racks.racks, "How many racks (default: 1)")
        ->check(CLI::Range(1, static_cast<int>(kMostRackLifters)));
    command->add_option("--bar", o.bar, "The bar in kg (default: 20)")->check(checkMass);
    command->add_option("--plates", o.plates, "Kinds of plate in kg, parted by commas")
        ->delimiter(',')
        ->check(checkPlate);
    command->add_flag("--json", o.racks.json, "Print JSON");
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

// What was printed may still lie in the buffer, and the disk behind it may be full.
int afterPrinting(int status)
{
    if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0) {
        return status;
    }
    fmt::print(stderr, "The answer could not be written to standard output.\n");
    return status == kDone ? kLogbookTrouble : status;
}

} // namespace

int main(int argc, char** argv)
try {
    const Clock clock = readClock();
    CLI::App app("The engine and the store of Levelbar without a window.", "levelbar-cli");
    app.set_version_flag("--version", "levelbar-cli 0.1.0");
    app.require_subcommand(1);
    app.failure_message([](const CLI::App* /*app*/, const CLI::Error& error) {
        return "levelbar-cli: " + oneLine(error.what()) + " (--help says more)\n";
    });
    Commands commands(app);
    Options options;
    addWriting(commands, options, clock);
    addReading(commands, options, clock);
    addTarget(commands, options, clock);
    addReport(commands, options, clock);
    addCopying(commands, options, clock);
    addRacks(commands, options);
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        return app.exit(error) == 0 ? kDone : kWrongUsage;
    }
    return afterPrinting(commands.status());

} catch (const levelbar::storage::StoreError& error) {
    fmt::print(stderr, "{}\n", oneLine(error.what()));
    return statusOf(error.kind());

} catch (const std::exception& error) {

    fmt::print(stderr, "Something went wrong inside levelbar-cli: {}\n", error.what());
    return levelbar::cli::kLogbookTrouble;
}
