// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"
#include "core/member/member.h"
#include "storage/action.h"
#include "storage/bulk_write.h"
#include "storage/class_store.h"
#include "storage/library_store.h"
#include "storage/logbook.h"
#include "storage/member_store.h"
#include "storage/set_store.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <string>

namespace levelbar::tests {

inline constexpr Moment kNow{1'780'000'000'000}; // one moment for all tests

// A folder of a test's own, gone with it.
class TemporaryFolder {
public:
    TemporaryFolder()
    {
        std::string pattern = (std::filesystem::temp_directory_path() / "levelbar-XXXXXX").string();
        m_path = ::mkdtemp(pattern.data());
    }

    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    ~TemporaryFolder()
    {
        std::error_code ignored;
        std::filesystem::remove_all(m_path, ignored);
    }

    [[nodiscard]] const std::filesystem::path& path() const { return m_path; }

    [[nodiscard]] std::filesystem::path operator/(const char* name) const { return m_path / name; }

private:
    std::filesystem::path m_path;
};

inline MemberId
addMember(storage::Logbook& logbook, const std::string& code, const std::string& name = "")
{
    storage::Action action(logbook, storage::ActionKind::AddMember, kNow);
    Member member;
    member.code = code;
    member.name = name;
    const MemberId id = storage::MemberStore::add(action, member);
    action.commit();
    return id;
}

inline Exercise exercise(const storage::Logbook& logbook, const char* name)
{
    return storage::LibraryStore(logbook).findExercise(name).value();
}

// A counted set of the barbell bench press.
inline DoneSet
benchSet(const storage::Logbook& logbook, MemberId member, Day day, int number, int reps)
{
    DoneSet set;
    set.member = member;
    set.exercise = exercise(logbook, "Barbell bench press").id;
    set.performed.day = day;
    set.performed.number = number;
    set.performed.reps = reps;
    set.performed.load = Mass::ofKilograms(60);
    return set;
}

inline storage::Change logSet(storage::Logbook& logbook, const DoneSet& set)
{
    storage::Action action(logbook, storage::ActionKind::LogSet, kNow);
    storage::SetStore::add(action, set);
    return action.commit();
}

} // namespace levelbar::tests
