// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/mass.h"
#include "core/base/side.h"
#include "core/exercise/done_set.h"
#include "core/exercise/effort.h"
#include "core/plan/goal_table.h"
#include "storage/exchange/import.h"
#include "storage/logbook.h"

#include <optional>
#include <string>
#include <vector>

// The commands of levelbar-cli, one file each. Every command returns its exit status.
namespace levelbar::cli {

inline constexpr int kDone = 0;
inline constexpr int kInputAtFault = 1;
inline constexpr int kWrongUsage = 2;
inline constexpr int kLogbookTrouble = 3;

// The only place that reads the clock is main().
struct Clock {
    Moment now;
    Day today;
};

struct NewOptions {
    std::string logbook;
    bool demo = false;
};

struct ImportOptions {
    std::string logbook;
    std::string members; // file names; empty: not given
    std::string sets;
    std::string tests;
    bool addExercises = false;
    bool update = false;
    bool dryRun = false;
    bool json = false;
};

struct ReviewOptions {
    std::string logbook;
    std::optional<Day> on;
    std::vector<std::string> members;
    bool json = false;
};

struct SidesOptions {
    std::string logbook;
    std::string member;  // empty: the lists
    std::string measure; // empty: all
    std::optional<Day> on;
    bool json = false;
};

struct ReportOptions {
    std::string logbook;
    std::string member;
    std::string pdf; // a file's name
    std::string on;  // a checked date; empty: today
    std::string paper = "a4";
};

struct TargetOptions {
    std::string logbook;
    std::string member;
    std::string exercise;
    std::optional<Side> side;
    int reps = 8;
    Reserve reserve{10 * kUsualReserve};
    std::optional<Day> on;
    bool json = false;
};

struct HowRightOptions {
    std::string logbook;
    std::optional<Day> first; // eight weeks up to the last when not given
    std::optional<Day> last;
    bool json = false;
};

struct GymOptions {
    std::string logbook;
    std::string kit; // a file's name; empty: not given
    std::optional<EffortScale> effort;
    bool json = false;
};

struct ShareRacksOptions {
    std::string lifters; // a file's name
    int racks = 1;
    Mass bar;
    std::vector<Mass> plates;
    bool json = false;
};

struct CheckOptions {
    std::string logbook;
    bool json = false;
};

int runNew(const NewOptions& options, const Clock& clock);
int runImport(const ImportOptions& options, const Clock& clock);
int runReview(const ReviewOptions& options, const Clock& clock);
int runSides(const SidesOptions& options, const Clock& clock);
// Runs the desktop program beside this one, which has what it takes to paint.
int runReport(const ReportOptions& options, const Clock& clock);
int runGym(const GymOptions& options, const Clock& clock);
int runHowRight(const HowRightOptions& options, const Clock& clock);
int runTarget(const TargetOptions& options, const Clock& clock);
int runShareRacks(const ShareRacksOptions& options);
int runExport(const std::string& logbook, const std::string& folder, const Clock& clock);
int runCheck(const CheckOptions& options, const Clock& clock);
int runBackup(const std::string& logbook, const std::string& file, const Clock& clock);
int runRestore(const std::string& file, const std::string& logbook, const Clock& clock);
int runErase(const std::string& logbook, const std::string& member, const Clock& clock);

// Opens for reading only; StoreError Corrupt when a look at every page finds damage, so that
// nothing is reckoned from half a logbook.
[[nodiscard]] storage::Logbook openForReading(const std::string& path, const Clock& clock);

// The same look first, while nothing is touched yet; then opens for writing.
[[nodiscard]] storage::Logbook openForWriting(const std::string& path, const Clock& clock);

// The bytes of a file; nothing, and a line on standard error, when it cannot be read.
[[nodiscard]] std::optional<std::string> readFile(const std::string& name);

// "FILE: WHAT" on standard error, one line whatever they hold. Returns kInputAtFault.
int atFault(const std::string& file, const std::string& what);

// What was passed over and the faults of an import on standard error, one line each.
void printFaults(const storage::ImportReport& report);

} // namespace levelbar::cli
