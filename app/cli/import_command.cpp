// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command.h"
#include "app/cli/json_print.h"
#include "core/base/utf8.h"
#include "storage/integrity.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>

namespace levelbar::cli {

namespace {

nlohmann::ordered_json countsJson(const storage::ImportCounts& counts)
{
    return {{"added", counts.added}, {"updated", counts.updated}, {"unchanged", counts.unchanged}};
}

nlohmann::ordered_json reportJson(const storage::ImportReport& report, bool isWritten)
{
    nlohmann::ordered_json faults = nlohmann::ordered_json::array();
    for (const storage::ImportFault& fault : report.faults) {
        faults.push_back({{"file", oneLine(fault.file)},
                          {"line", fault.line},
                          {"column", fault.column},
                          {"text", sentence(fault.fault)}});
    }
    return {{"written", isWritten},
            {"members", countsJson(report.members)},
            {"sets", countsJson(report.sets)},
            {"tests", countsJson(report.tests)},
            {"classes_added", report.classesAdded},
            {"exercises_added", report.exercisesAdded},
            {"passed_over", report.passedOver},
            {"faults", faults}};
}

void printCounts(const char* what, const storage::ImportCounts& counts)
{
    fmt::print("{:<8} {:>9} added {:>9} updated {:>9} unchanged\n",
               what,
               counts.added,
               counts.updated,
               counts.unchanged);
}

} // namespace

// By the C library, which tells an error halfway from the end of the file; streams do not.
std::optional<std::string> readFile(const std::string& name)
{
    const auto close = [](std::FILE* file) { std::fclose(file); };
    const std::unique_ptr<std::FILE, decltype(close)> file(std::fopen(name.c_str(), "rb"), close);
    std::string bytes;
    std::array<char, 65536> piece{};
    std::size_t count = 1;
    while (file && count > 0) {
        count = std::fread(piece.data(), 1, piece.size(), file.get());
        bytes.append(piece.data(), count);
    }
    if (!file || std::ferror(file.get()) != 0) {
        atFault(name, fmt::format("cannot be read ({})", std::strerror(errno)));
        return std::nullopt;
    }
    return bytes;
}

int atFault(const std::string& file, const std::string& what)
{
    fmt::print(stderr, "{}\n", oneLine(file + ": " + what));
    return kInputAtFault;
}

void printFaults(const storage::ImportReport& report)
{
    for (const std::string& notice : report.passedOver) {
        fmt::print(stderr, "{}\n", notice);
    }
    for (const storage::ImportFault& fault : report.faults) {
        fmt::print(stderr, "{}\n", text(fault));
    }
}

namespace {

// Prints the outcome; the exit status.
int tell(const storage::ImportReport& report, const ImportOptions& options)
{
    const bool isSound = report.faults.empty();
    printFaults(report);
    if (options.json) {
        printJson(reportJson(report, isSound && !options.dryRun));
        return isSound ? kDone : kInputAtFault;
    }
    if (!isSound) {
        fmt::print("Nothing was written. Faults: {}.\n", report.faults.size());
        return kInputAtFault;
    }
    printCounts("people", report.members);
    printCounts("sets", report.sets);
    printCounts("trials", report.tests);
    fmt::print("{} classes and {} exercises added.{}\n",
               report.classesAdded,
               report.exercisesAdded,
               options.dryRun ? " A dry run: nothing was written." : "");
    return kDone;
}

// A dry run works on a copy: the file keeps every byte, and may be in use meanwhile.
storage::Logbook openToImport(const ImportOptions& options, const Clock& clock)
{
    if (!options.dryRun) {
        return openForWriting(options.logbook, clock);
    }
    storage::Logbook copy = storage::Logbook::scratchCopy(options.logbook, clock.now);
    storage::requireSound(copy, storage::Thoroughness::Quick, "restore a backup.");
    return copy;
}

} // namespace

int runImport(const ImportOptions& options, const Clock& clock)
{
    if (options.members.empty() && options.sets.empty() && options.tests.empty()) {
        fmt::print(stderr, "Nothing to import: name a file with --members, --sets or --tests.\n");
        return kWrongUsage;
    }
    // The texts must outlive the import: the request only points at them.
    std::array<std::optional<std::string>, 3> texts;
    const std::array names = {&options.members, &options.sets, &options.tests};
    bool isReadable = true;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (!names.at(i)->empty()) {
            texts.at(i) = readFile(*names.at(i));
            isReadable = isReadable && texts.at(i).has_value();
        }
    }
    if (!isReadable) {
        return kInputAtFault;
    }
    storage::Logbook logbook = openToImport(options, clock);
    storage::ImportRequest request;
    const auto source = [&](std::size_t i) -> std::optional<storage::ImportSource> {
        if (!texts.at(i)) {
            return std::nullopt;
        }
        return storage::ImportSource{*names.at(i), *texts.at(i)};
    };
    request.members = source(0);
    request.sets = source(1);
    request.tests = source(2);
    request.addExercises = options.addExercises;
    request.update = options.update;
    request.dryRun = options.dryRun;
    const storage::ImportReport report = storage::importCsv(logbook, request, clock.now);
    logbook.close();
    return tell(report, options);
}

} // namespace levelbar::cli
