// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/exercise.h"
#include "core/testing/trial.h"
#include "storage/class_store.h"
#include "storage/exchange/import.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <array>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

namespace levelbar::storage {

struct TextHash {
    using is_transparent = void;

    std::size_t operator()(std::string_view text) const
    {
        return std::hash<std::string_view>{}(text);
    }
};

template <typename T> using ByText = std::unordered_map<std::string, T, TextHash, std::equal_to<>>;

// What the three importers share: the open transaction, and people, exercises, tests, classes and
// meetings by the names that files use, looked up once.
class ImportContext {
public:
    ImportContext(WriteScope& scope, const ImportRequest& request, ImportReport& report);

    [[nodiscard]] WriteScope& scope() const { return m_scope; }

    [[nodiscard]] const ImportRequest& request() const { return m_request; }

    [[nodiscard]] ImportReport& report() const { return m_report; }

    [[nodiscard]] std::optional<MemberId> member(std::string_view code) const;
    void addMember(const std::string& code, MemberId id);

    // By name without regard to case; an unknown one is added when the request says so, with the
    // side seen (noteSide widens it later).
    [[nodiscard]] Result<ExerciseId> exercise(std::string_view name, Side side, AmountKind amount);
    void noteSide(ExerciseId exercise, Side side);
    // Writes the sides seen of added exercises.
    void finishExercises();

    [[nodiscard]] Result<const TestKind*> test(std::string_view name, Side side);

    [[nodiscard]] ClassId groupClass(std::string_view name);
    // Finds or makes the meeting; without a start, the first of that day (one without a start
    // before all).
    [[nodiscard]] MeetingId meeting(ClassId groupClass, Day day, std::optional<TimeOfDay> start);
    // The class's meetings of that day known so far.
    [[nodiscard]] std::span<const Meeting> meetingsOf(ClassId groupClass, Day day) const;
    // A person with a set in a meeting came to it.
    void noteCame(MeetingId meeting, MemberId member);

private:
    struct Added {
        Exercise exercise;
        std::set<Side> sides;
    };

    [[nodiscard]] const Exercise* findExercise(std::string_view name);

    WriteScope& m_scope;
    const ImportRequest& m_request;
    ImportReport& m_report;
    ByText<MemberId> m_members;
    std::map<std::string, Exercise> m_exercisesByFolded;
    ByText<const Exercise*> m_exercisesByText; // as the file spells it
    std::map<ExerciseId, Added> m_added;
    std::map<std::string, TestKind> m_testsByFolded;
    ByText<const TestKind*> m_testsByText;
    ByText<ClassId> m_classes;
    std::map<std::pair<ClassId, Day>, std::vector<Meeting>> m_meetings;
    std::set<std::pair<MeetingId, MemberId>> m_came;
    std::pair<MeetingId, MemberId> m_lastCame;
    SQLite::Statement m_insertCame;
};

void importMembers(ImportContext& context, const ImportSource& source);
void importSets(ImportContext& context, const ImportSource& source);
void importTrials(ImportContext& context, const ImportSource& source);

} // namespace levelbar::storage
