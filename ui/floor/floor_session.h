// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/class_plan.h"
#include "core/review/history.h"
#include "storage/class_store.h"
#include "storage/set_store.h"
#include "ui/workspace.h"

#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

namespace levelbar::ui {

// One column of the class floor: a set of an exercise, on a side.
struct FloorColumn {
    const Exercise* exercise = nullptr;
    Side side = Side::Both;
    int number = 1; // within the meeting

    friend bool operator==(const FloorColumn&, const FloorColumn&) = default;
};

// One cell: what was planned, and what was done.
struct FloorCell {
    std::optional<PlannedSet> planned;
    std::optional<DoneSet> done;
};

// A class on a day as the logbook has it, and what can be done with it. Every change is one action
// and is announced; everything throws StoreError and leaves the logbook as it was then.
class FloorSession {
public:
    explicit FloorSession(Workspace& workspace);

    // Shows a class on a day. Nothing is written by looking.
    void open(ClassId groupClass, Day day);
    void reload();

    [[nodiscard]] bool isOpen() const { return m_class.isStored(); }

    [[nodiscard]] ClassId groupClass() const { return m_class; }

    [[nodiscard]] Day day() const { return m_day; }

    [[nodiscard]] const std::vector<Member>& candidates() const { return m_candidates; }

    [[nodiscard]] const std::vector<Member>& present() const { return m_present; }

    [[nodiscard]] const std::vector<FloorColumn>& columns() const { return m_columns; }

    [[nodiscard]] const std::vector<TemplateItem>& items() const { return m_items; }

    [[nodiscard]] bool isTemplateProposed() const { return m_isProposed; }

    [[nodiscard]] const Library& library() const { return m_library; }

    [[nodiscard]] bool isPresent(MemberId member) const;
    [[nodiscard]] const FloorCell& cell(std::size_t row, std::size_t column) const;

    // Who came: lays the person's plan, or takes it away. False when sets were done already.
    bool setPresent(const Member& member, bool came);
    // The class's exercises from now on; plans already laid follow.
    void setTemplate(const std::vector<TemplateItem>& items);
    ClassId addClass(const std::string& name);

    // Stores what was keyed into a cell: a new set, or a correction of the one there. NeedsAmount
    // when it is "as planned" and the plan has no reps.
    [[nodiscard]] Result<DoneSet>
    store(std::size_t row, std::size_t column, const CellEntry& entry);
    // Load of this cell and of the later open ones of the same exercise, side and person.
    void setLoad(std::size_t row, std::size_t column, Mass load);

    // Initials of who keys.
    void setInitials(const std::string& initials) { m_initials = initials; }

private:
    using CellKey = std::tuple<MemberId, ExerciseId, Side, int>;

    [[nodiscard]] MeetingId meetingFor(storage::WriteScope& scope);
    void layPlan(storage::WriteScope& scope, MeetingId meeting, MemberId member);
    void readPeople();
    void readCells();
    [[nodiscard]] std::vector<TemplateItem> proposal() const;

    Workspace& m_workspace;
    Library m_library;
    ClassId m_class;
    Day m_day;
    std::optional<storage::Meeting> m_meeting;
    std::vector<TemplateItem> m_items;
    bool m_isProposed = false;
    std::vector<Member> m_candidates; // the class's people and whoever came
    std::vector<Member> m_present;
    std::vector<FloorColumn> m_columns;
    std::map<CellKey, FloorCell> m_cells;
    std::string m_initials;
};

} // namespace levelbar::ui
