// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
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

struct CheckOptions {
    std::string logbook;
    bool json = false;
};

int runNew(const NewOptions& options, const Clock& clock);
int runImport(const ImportOptions& options, const Clock& clock);
int runReview(const ReviewOptions& options, const Clock& clock);
int runExport(const std::string& logbook, const std::string& folder, const Clock& clock);
int runCheck(const CheckOptions& options, const Clock& clock);
int runBackup(const std::string& logbook, const std::string& file, const Clock& clock);
int runRestore(const std::string& file, const std::string& logbook, const Clock& clock);
int runErase(const std::string& logbook, const std::string& member, const Clock& clock);

// Opens for reading only.
[[nodiscard]] storage::Logbook openForReading(const std::string& path, const Clock& clock);

// The faults of an import on standard error, one line each (at most 1,000, then how many more).
void printFaults(const storage::ImportReport& report);

} // namespace levelbar::cli
