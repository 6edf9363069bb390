// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/fault.h"
#include "storage/logbook.h"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar::storage {

// Something wrong in a file: where, and what.
struct ImportFault {
    std::string file;
    int line = 0;       // where the record starts; 0 = the whole file
    std::string column; // empty = the whole record
    Fault fault;
};

// "sets.csv:12: column 'reps': 'ten' is not a whole number from 0 to 200"
[[nodiscard]] std::string text(const ImportFault& fault);

struct ImportCounts {
    int added = 0;
    int updated = 0;
    int unchanged = 0; // stood there already with the same values
};

struct ImportReport {
    ImportCounts members;
    ImportCounts sets;
    ImportCounts tests;
    int classesAdded = 0;
    int exercisesAdded = 0;
    std::vector<std::string> passedOver; // notices: "sets.csv: column 'mood' is not known"
    std::vector<ImportFault> faults;     // any: nothing was written
};

// Where CSV text comes from: a file's name for messages and its bytes.
struct ImportSource {
    std::string name;
    std::string_view bytes;
};

struct ImportRequest {
    std::optional<ImportSource> members;
    std::optional<ImportSource> sets;
    std::optional<ImportSource> tests;
    bool addExercises = false; // an unknown exercise is added, with the sides seen in the file
    bool update = false;       // other values for a known key replace what is stored
    bool dryRun = false;       // report only
};

// All or nothing, in one transaction: with any fault nothing is written and every fault is in
// the report. Members are read before sets and tests, so that one call can bring all three.
[[nodiscard]] ImportReport importCsv(Logbook& logbook, const ImportRequest& request, Moment now);

} // namespace levelbar::storage
