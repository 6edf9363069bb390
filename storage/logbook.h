// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/strength/rep_curve_expectation.h"

#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <string>

namespace SQLite {
class Database;
}

namespace levelbar::storage {

inline constexpr std::int32_t kApplicationId = 0x4C56424C; // "LVBL"

enum class OpenMode { ReadWrite, ReadOnly };

struct OpenOptions {
    OpenMode mode = OpenMode::ReadWrite;
    bool takesOlder = false; // ReadOnly: an older schema may be looked at, to check or copy it
    std::string vfs; // SQLite VFS name; empty = the default one. For tests that cut the power.
};

// A state of the file as one connection sees it: others' commits, and its own changed rows.
struct FileState {
    std::int64_t version = -1;
    std::int64_t ownChanges = -1;

    friend bool operator==(const FileState&, const FileState&) = default;
};

// What the gym's people have taught about the rep curve before a Monday, in one state of the file.
// While something is being written the answers of its beginning hold: see WriteScope.
struct RememberedCurves {
    FileState state;
    bool isHeld = false;
    std::map<Day, RepCurveExpectation> before;
};

// One open logbook file: the connection, its settings, and the right to write. Not thread-safe:
// one object a thread. Everything here throws StoreError.
class Logbook {
public:
    // Makes a new, empty logbook with the shipped library in it. Exists when the file is there.
    [[nodiscard]] static Logbook
    create(const std::filesystem::path& path, Moment now, const OpenOptions& options = {});

    // Opens an existing one. ReadWrite takes the writer's lock (Busy when another program holds
    // it), brings an older schema up to date (a copy is made beside it first) and refreshes the
    // shipped library. ReadOnly changes nothing, the file's folder included.
    [[nodiscard]] static Logbook
    open(const std::filesystem::path& path, Moment now, const OpenOptions& options = {});

    // A copy as the file stands now, brought up to date and open for writing; nothing done to it
    // reaches the file. It lies in memory and, when large, in a file without a name. Needs neither
    // the writer's lock nor a folder that may be written.
    [[nodiscard]] static Logbook scratchCopy(const std::filesystem::path& path, Moment now);

    // A logbook in memory, for tests.
    [[nodiscard]] static Logbook inMemory(Moment now);

    Logbook(Logbook&&) noexcept;
    Logbook& operator=(Logbook&&) noexcept;
    ~Logbook(); // closes as close() does, keeping failures to itself

    // Brings everything into the one file and lets go of it. Nothing else may be called after.
    void close();

    [[nodiscard]] bool canWrite() const;
    [[nodiscard]] const std::filesystem::path& path() const; // empty for inMemory
    [[nodiscard]] int schemaVersion() const;

    // Rises when another connection commits (SQLite's data_version).
    [[nodiscard]] std::int64_t dataVersion() const;

    [[nodiscard]] FileState state() const;

    // Makes a running read on this connection end with StoreError Interrupted. The only function
    // that another thread may call.
    void interrupt() noexcept;

    // For storage's own classes.
    [[nodiscard]] SQLite::Database& database() const;
    [[nodiscard]] RememberedCurves& rememberedCurves() const; // see repCurveOn

private:
    struct Open;
    explicit Logbook(std::unique_ptr<Open> open);

    std::unique_ptr<Open> m_open;
    mutable RememberedCurves m_curves; // outlives the open file, as a write in it may
};

} // namespace levelbar::storage
