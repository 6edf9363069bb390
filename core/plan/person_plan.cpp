// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/person_plan.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace levelbar {

namespace {

// What every set of an item aims at.
struct Aim {
    Mass load;
    int reps = 0;
};

std::vector<DoneSet> doneSetsOf(const MemberHistory& history)
{
    std::vector<DoneSet> done;
    for (const SetSeries& series : history.sets) {
        for (const PerformedSet& performed : series.sets) {
            DoneSet set;
            set.member = history.member.id;
            set.exercise = series.exercise;
            set.side = series.side;
            set.performed = performed;
            done.push_back(std::move(set));
        }
    }
    return done;
}

std::optional<Aim> aimOf(const Result<Target>& target)
{
    const auto load = loadOf(target);
    if (!load) {
        return std::nullopt;
    }
    if (target->progression.load) {
        const int asked = target->progression.reps;
        return Aim{load->load, asked > 0 ? asked : target->reps};
    }
    // Too heavy as it is: as many reps as leave the reserve, one at least.
    const double able = std::floor(target->lightestReps - target->reserve.reps());
    return Aim{load->load, static_cast<int>(std::clamp<double>(able, 1.0, target->reps))};
}

// A plan that gives nothing to either side leaves the sets as they are: the floor says why they are
// not asked for.
int setsOf(const SidePlan* plan, Side side, int usual)
{
    if (plan == nullptr || side == Side::Both || plan->leftSets + plan->rightSets == 0) {
        return usual;
    }
    return side == Side::Left ? plan->leftSets : plan->rightSets;
}

class PersonPlanner {
public:
    explicit PersonPlanner(const PersonPlanQuestion& question)
        : m_question(question)
        , m_before(historyBefore(question.history, question.on))
        , m_done(doneSetsOf(m_before))
    {
    }

    std::vector<PlannedSet> plan()
    {
        std::vector<TargetQuestion> questions;
        for (const PlanItem& item : m_question.items) {
            questions.push_back(targetQuestion(m_before, item, m_question.on));
        }
        const auto targets = targetsFor(m_before, m_question.library, m_question.kit, questions);
        for (std::size_t at = 0; at < targets.size(); ++at) {
            add(m_question.items[at], questions[at], aimOf(targets[at]));
        }
        return std::move(m_plan);
    }

private:
    void add(const PlanItem& item, const TargetQuestion& asked, std::optional<Aim> aim)
    {
        const SidePlan* sides = sidesOf(item.what.exercise);
        if (sides != nullptr && sides->load) {
            aim = Aim{sides->load->load, sides->reps > 0 ? sides->reps : asked.reps};
        }
        TemplateItem what = item.what;
        what.sets = std::max({what.sets,
                              setsOf(sides, Side::Left, what.sets),
                              setsOf(sides, Side::Right, what.sets)});
        int& before = m_numbers[what.exercise];
        for (PlannedSet set : planFromLast(m_question.meeting,
                                           m_before.member.id,
                                           {&what, 1},
                                           m_question.library.exercises,
                                           m_done)) {
            if (set.number > setsOf(sides, set.side, item.what.sets)) {
                continue;
            }
            set.number += before;
            if (aim) {
                set.load = aim->load;
                set.amount = aim->reps;
                set.reserve = asked.reserve;
            }
            m_plan.push_back(std::move(set));
        }
        before += what.sets;
    }

    [[nodiscard]] const SidePlan* sidesOf(ExerciseId exercise) const
    {
        const auto found = m_question.sides.find(exercise);
        return found == m_question.sides.end() ? nullptr : &found->second;
    }

    const PersonPlanQuestion& m_question;
    MemberHistory m_before;
    std::vector<DoneSet> m_done;
    std::map<ExerciseId, int> m_numbers; // planned so far
    std::vector<PlannedSet> m_plan;
};

} // namespace

int repsAskedOf(const MemberHistory& history, const PlanItem& item)
{
    if (item.what.reps) {
        return std::clamp(*item.what.reps, 1, kMostTargetReps);
    }
    Day last;
    std::vector<int> reps;
    for (const SetSeries& series : history.sets) {
        if (series.exercise != item.what.exercise) {
            continue;
        }
        for (const PerformedSet& set : series.sets) {
            const bool isWork = set.kind == SetKind::Work && set.reps.value_or(0) > 0;
            if (!isWork || (!reps.empty() && set.day < last)) {
                continue;
            }
            if (set.day != last) {
                reps.clear();
                last = set.day;
            }
            reps.push_back(*set.reps);
        }
    }
    if (reps.empty()) {
        return TargetQuestion{}.reps;
    }
    const auto middle = reps.begin() + static_cast<std::ptrdiff_t>((reps.size() - 1) / 2);
    std::nth_element(reps.begin(), middle, reps.end());
    return std::clamp(*middle, 1, kMostTargetReps);
}

TargetQuestion targetQuestion(const MemberHistory& history, const PlanItem& item, Day on)
{
    TargetQuestion question;
    question.exercise = item.what.exercise;
    question.reps = repsAskedOf(history, item);
    question.reserve = item.reserve.value_or(kPlanReserve);
    question.on = on;
    return question;
}

std::optional<AvailableLoad> loadOf(const Result<Target>& target)
{
    if (!target) {
        return std::nullopt;
    }
    return target->progression.load ? target->progression.load : target->lightest;
}

std::vector<PlannedSet> planFor(const PersonPlanQuestion& question)
{
    return PersonPlanner(question).plan();
}

} // namespace levelbar
