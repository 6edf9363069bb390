// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_sides.h"

#include "core/sides/side_planning.h"
#include "storage/gym_store.h"
#include "storage/history_reader.h"
#include "storage/set_store.h"
#include "storage/side_store.h"

#include <algorithm>
#include <array>

namespace levelbar::ui {

namespace {

struct Pair {
    FloorCell* left = nullptr;
    FloorCell* right = nullptr;

    [[nodiscard]] FloorCell* of(Side side) const { return side == Side::Left ? left : right; }
};

using Pairs = std::map<std::pair<ExerciseId, int>, Pair>; // by exercise and set

Pairs pairsOf(FloorRow& row, const FloorSheet& sheet, const Library& library)
{
    Pairs pairs;
    for (std::size_t at = 0; at < row.cells.size(); ++at) {
        const FloorColumn& column = sheet.columns[at];
        const Exercise* exercise = library.exercise(column.exercise);
        if (exercise == nullptr || exercise->sidedness != Sidedness::SingleSided ||
            column.side == Side::Both) {
            continue;
        }
        Pair& pair = pairs[{column.exercise, column.number}];
        (column.side == Side::Left ? pair.left : pair.right) = &row.cells[at];
    }
    return pairs;
}

// How the plan wants an exercise trained that a difference is trained in.
SidePlanAim aimOf(const FloorSheet& sheet, const MemberHistory& history, ExerciseId exercise)
{
    SidePlanAim aim;
    int sets = 0;
    for (const PlanItem& item : sheet.plan) {
        if (item.what.exercise == exercise) {
            sets += item.what.sets;
            aim.reps = repsAskedOf(history, item);
            aim.reserve = item.reserve.value_or(kPlanReserve);
        }
    }
    aim.sets = std::max(1, sets);
    return aim;
}

// The side of the exercise that was done first in this meeting.
std::optional<Side> firstOfToday(const FloorSheet& sheet, const FloorRow& row, ExerciseId exercise)
{
    const DoneSet* first = nullptr;
    for (std::size_t at = 0; at < row.cells.size(); ++at) {
        const auto& done = row.cells[at].done;
        const bool isOurs = sheet.columns[at].exercise == exercise && done &&
                            done->side != Side::Both && done->performed.order > 0;
        if (isOurs && (first == nullptr || done->performed.order < first->performed.order)) {
            first = &*done;
        }
    }
    return first == nullptr ? std::nullopt : std::optional(first->side);
}

bool isEndedByPain(const FloorSheet& sheet, const FloorRow& row, ExerciseId exercise)
{
    for (std::size_t at = 0; at < row.cells.size(); ++at) {
        const auto& done = row.cells[at].done;
        if (sheet.columns[at].exercise == exercise && done &&
            capAfter(done->performed).endsExercise) {
            return true;
        }
    }
    return false;
}

// The rule by which neither side is trained.
std::optional<SideRule> notToday(const SidePlan& plan)
{
    for (const SideRule rule : plan.rules) {
        if (rule == SideRule::SentOn || rule == SideRule::PainEnds) {
            return rule;
        }
    }
    return std::nullopt;
}

int setsOf(const SidePlan& plan, Side side)
{
    return side == Side::Left ? plan.leftSets : plan.rightSets;
}

// `number`: the set's, within the exercise.
void layPair(const Pair& pair, const SidePlan& plan, Side first, int number)
{
    const bool isUncapped = plan.uncapped && number == setsOf(plan, *plan.uncapped);
    const bool isCapped = plan.isCapped && !isUncapped;
    const bool isExtra = plan.isCapped && number > setsOf(plan, otherSide(first));
    for (const Side side : {Side::Left, Side::Right}) {
        if (FloorCell* cell = pair.of(side)) {
            cell->sides.first = first;
            cell->sides.isFirst = side == first;
            cell->sides.isOpenPair = plan.isOpenPair;
            cell->sides.isCapped = isCapped;
            cell->sides.isUncapped = isUncapped && side == *plan.uncapped;
            cell->sides.isExtra = isExtra && side == first && cell->planned.has_value();
        }
    }
    const FloorCell* begun = pair.of(first);
    FloorCell* other = pair.of(otherSide(first));
    if (isCapped && other != nullptr && begun != nullptr && begun->done) {
        const SideCap cap = capAfter(begun->done->performed);
        other->sides.stopAt = cap.reps;
        other->sides.isLessOne = cap.isLessOne;
    }
}

} // namespace

std::optional<Side> lastFirstSide(const std::vector<DoneSet>& done, ExerciseId exercise, Day day)
{
    // By day: the least order of either side. Rows without an order say nothing.
    struct Orders {
        std::array<int, 3> least{};
    };

    std::map<Day, Orders> days;
    for (const DoneSet& set : done) {
        const int order = set.performed.order;
        if (set.exercise != exercise || set.performed.day >= day || order <= 0) {
            continue;
        }
        int& least = days[set.performed.day].least.at(static_cast<std::size_t>(set.side));
        least = least == 0 ? order : std::min(least, order);
    }
    const auto leastOf = [](const Orders& orders, Side side) {
        return orders.least.at(static_cast<std::size_t>(side));
    };
    const auto last = std::find_if(days.rbegin(), days.rend(), [&](const auto& one) {
        return leastOf(one.second, Side::Left) > 0 && leastOf(one.second, Side::Right) > 0;
    });
    if (last == days.rend()) {
        return std::nullopt;
    }
    const bool isLeft = leastOf(last->second, Side::Left) < leastOf(last->second, Side::Right);
    return isLeft ? Side::Left : Side::Right;
}

bool FloorSides::setRoster(const ReviewedRosterPointer& roster)
{
    m_newest = roster;
    if (m_roster) {
        return false;
    }
    m_roster = roster;
    m_decided.clear();
    return true;
}

const SideReview* FloorSides::reviewOf(Key key) const
{
    if (!m_roster) {
        return nullptr;
    }
    const auto& members = m_roster->review.members;
    const auto member = std::find_if(
        members.begin(), members.end(), [&](const auto& m) { return m.member.id == key.first; });
    if (member == members.end()) {
        return nullptr;
    }
    const auto side = std::find_if(member->sides.begin(), member->sides.end(), [&](const auto& s) {
        return s.measure.exercise == key.second;
    });
    return side == member->sides.end() ? nullptr : &*side;
}

SidePlan FloorSides::planListed(const storage::Logbook& logbook,
                                const FloorSheet& sheet,
                                Key key,
                                const SideReview& review,
                                const SideRecords& records) const
{
    const auto history = storage::historyOf(logbook, key.first, sheet.day);
    if (!history) {
        return {};
    }
    const Kit kit = storage::GymStore(logbook).kit();
    SidePlanBasis basis{*history, m_roster->library, kit, review, records, sheet.day, {}};
    basis.aim = aimOf(sheet, *history, key.second);
    return planSides(basis).value_or(SidePlan{});
}

const FloorSides::Decided&
FloorSides::decide(const storage::Logbook& logbook, const FloorSheet& sheet, Key key)
{
    const auto known = m_decided.find(key);
    if (known != m_decided.end()) {
        return known->second;
    }
    const SideRecords records = storage::SideStore(logbook).ofMember(key.first);
    const SidePrescription* running = records.prescriptionFor(key.second, sheet.day);
    const SideReview* review = reviewOf(key);
    const bool isListed = review != nullptr && review->tier != SideTier::None;
    Decided decided;
    if (review != nullptr && (isListed || running != nullptr)) {
        decided.plan = planListed(logbook, sheet, key, *review, records);
    } else {
        const auto last =
            lastFirstSide(storage::SetStore(logbook).ofMember(key.first), key.second, sheet.day);
        decided.plan.first = last ? otherSide(*last) : Side::Left;
    }
    const auto end = endOf(decided.plan);
    if (running != nullptr && end) {
        decided.prescription = *running;
        decided.prescription->ended = sheet.day;
        decided.prescription->why = end;
    } else if (running == nullptr && decided.plan.isCapped) {
        decided.prescription = SidePrescription{key.second, sheet.day, {}, {}, false};
    }
    return m_decided.emplace(key, std::move(decided)).first->second;
}

void FloorSides::begin(const FloorSheet& sheet)
{
    if (m_meeting != std::pair(sheet.groupClass, sheet.day)) {
        m_meeting = std::pair(sheet.groupClass, sheet.day);
        m_roster = m_newest;
        m_decided.clear();
    }
}

SidePlans FloorSides::plansOf(const storage::Logbook& logbook,
                              const FloorReference& reference,
                              const FloorSheet& sheet,
                              MemberId member)
{
    begin(sheet);
    SidePlans plans;
    for (const PlanItem& item : sheet.plan) {
        const ExerciseId id = item.what.exercise;
        const Exercise* exercise = reference.library.exercise(id);
        if (exercise == nullptr || exercise->sidedness != Sidedness::SingleSided) {
            continue;
        }
        const SidePlan& plan = decide(logbook, sheet, {member, id}).plan;
        if (!plan.rules.empty()) {
            plans.emplace(id, plan);
        }
    }
    return plans;
}

// What the cell says of its exercise; null: this side is not planned.
void FloorSides::tellCell(FloorCell* cell, const Decided& decided, bool isOver)
{
    if (cell != nullptr) {
        cell->sides.isOver = isOver;
        cell->sides.notToday = notToday(decided.plan);
        cell->sides.prescription = decided.prescription;
    }
}

void FloorSides::lay(const storage::Logbook& logbook,
                     const FloorReference& reference,
                     FloorSheet& sheet)
{
    begin(sheet);
    for (FloorRow& row : sheet.rows) {
        for (const auto& [key, pair] : pairsOf(row, sheet, reference.library)) {
            const Decided& decided = decide(logbook, sheet, {row.member, key.first});
            const auto today = firstOfToday(sheet, row, key.first);
            const Side planned = decided.plan.first;
            layPair(pair,
                    decided.plan,
                    decided.plan.isCapped ? planned : today.value_or(planned),
                    key.second);
            const bool isOver = isEndedByPain(sheet, row, key.first);
            for (FloorCell* cell : {pair.left, pair.right}) {
                tellCell(cell, decided, isOver);
            }
        }
    }
}

} // namespace levelbar::ui
