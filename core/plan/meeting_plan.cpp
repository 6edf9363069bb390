// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/meeting_plan.h"

#include "core/plan/person_plan.h"

#include <algorithm>
#include <set>

namespace levelbar {

namespace {

constexpr int kFirstOwnStation = 1000; // above every rack's number

PlanBlock blockOf(std::span<const PlanBlock> blocks, int number)
{
    const auto found = std::find_if(
        blocks.begin(), blocks.end(), [number](const PlanBlock& b) { return b.number == number; });
    return found == blocks.end() ? PlanBlock{number, PlanBlock{}.minutes, 1} : *found;
}

class Planner {
public:
    explicit Planner(const MeetingPlanQuestion& question)
        : m_question(question)
    {
    }

    MeetingPlanAnswer plan()
    {
        aim();
        std::set<int> numbers;
        for (const PlanItem& item : m_question.items) {
            numbers.insert(item.block);
        }
        for (const int number : numbers) {
            m_answer.blocks.push_back(planBlock(blockOf(m_question.blocks, number)));
        }
        findWants();
        return std::move(m_answer);
    }

private:
    [[nodiscard]] const Exercise* exerciseOf(std::size_t item) const
    {
        return m_question.library->exercise(m_question.items[item].what.exercise);
    }

    [[nodiscard]] bool isOnRacks(std::size_t item) const
    {
        const Exercise* exercise = exerciseOf(item);
        return exercise != nullptr && exercise->implement == Implement::Barbell;
    }

    // One fit a person for all exercises; the answer is laid out by exercise.
    void aim()
    {
        const std::size_t people = m_question.people.size();
        m_answer.targets.resize(m_question.items.size() * people);
        for (std::size_t person = 0; person < people; ++person) {
            const MemberHistory before = historyBefore(m_question.people[person], m_question.on);
            std::vector<TargetQuestion> questions;
            for (const PlanItem& item : m_question.items) {
                questions.push_back(targetQuestion(before, item, m_question.on));
            }
            auto targets = targetsFor(before, *m_question.library, *m_question.kit, questions);
            for (std::size_t item = 0; item < targets.size(); ++item) {
                PlannedTarget& made = m_answer.targets[item * people + person];
                made.member = before.member.id;
                made.item = item;
                made.target = std::move(targets[item]);
            }
        }
    }

    [[nodiscard]] const PlannedTarget& targetAt(std::size_t item, std::size_t person) const
    {
        return m_answer.targets[item * m_question.people.size() + person];
    }

    BlockPlan planBlock(const PlanBlock& block)
    {
        BlockPlan plan;
        plan.block = block;
        double minutes = 0.0;
        std::optional<BlockTask> longest;
        for (std::size_t item = 0; item < m_question.items.size(); ++item) {
            const PlanItem& of = m_question.items[item];
            if (of.block != block.number) {
                continue;
            }
            plan.sets += of.what.sets;
            BlockTask task;
            task.rounds = of.what.sets;
            task.minutes = block.minutes;
            task.pace.work = of.workSeconds.value_or(static_cast<int>(task.pace.work));
            task.pace.rest = of.restSeconds.value_or(static_cast<int>(task.pace.rest));
            for (int half = 1; half <= block.halves; ++half) {
                if (isOnRacks(item)) {
                    share(plan, item, half, task);
                }
            }
            const bool hasRacks = !task.halves.empty();
            const double needed = hasRacks ? minutesOf(task).minutes
                                           : of.what.sets * (task.pace.work + task.pace.rest) / 60;
            if (hasRacks && (!longest || needed > minutesOf(*longest).minutes)) {
                longest = task;
            }
            minutes += needed;
        }
        takeMinutes(plan, minutes, longest);
        return plan;
    }

    // Savings are those of the exercise that takes longest, in what the others leave of the block.
    static void
    takeMinutes(BlockPlan& plan, double minutes, const std::optional<BlockTask>& longest)
    {
        constexpr double kRounding = 1e-9;
        if (longest) {
            BlockTask task = *longest;
            const double others = minutes - minutesOf(task).minutes;
            task.minutes = std::max(0.0, plan.block.minutes - others);
            plan.minutes = minutesOf(task);
            for (BlockSaving& saving : plan.minutes.savings) {
                saving.minutes += others;
            }
        }
        plan.minutes.minutes = minutes;
        plan.minutes.fits = minutes <= plan.block.minutes + kRounding;
    }

    void share(BlockPlan& plan, std::size_t item, int half, BlockTask& task)
    {
        const std::vector<RackClaim> claims = claimsOf(plan.block, item, half);
        if (claims.empty() || m_question.kit->bars.empty()) {
            return;
        }
        auto shared = lineUp(claims,
                             *m_question.kit,
                             m_question.company,
                             m_question.racks,
                             m_question.isProofWanted);
        if (!shared) {
            plan.noSharing = shared.error();
            return;
        }
        task.halves.push_back(shared->sharing.racks);
        RackRound round{item,
                        m_question.items[item].what.exercise,
                        half,
                        placesOf(shared->sharing, claims),
                        std::move(shared->sharing),
                        shared->broken};
        plan.rounds.push_back(std::move(round));
    }

    // Whoever of a half has a load.
    [[nodiscard]] std::vector<RackClaim>
    claimsOf(const PlanBlock& block, std::size_t item, int half) const
    {
        const std::size_t people = m_question.people.size();
        const std::size_t middle = (people + 1) / 2;
        const std::size_t first = half == 1 ? 0 : middle;
        const std::size_t end = block.halves == 1 || half == 2 ? people : middle;
        std::vector<RackClaim> claims;
        for (std::size_t person = first; person < end; ++person) {
            const PlannedTarget& planned = targetAt(item, person);
            const auto load = planned.load();
            if (!load) {
                continue;
            }
            RackClaim claim{m_question.people[person].member.id, load->load, {}, {}};
            for (const WarmUpSet& set : planned.target->ramp) {
                claim.ramp.push_back(set.load.load);
            }
            const auto setting =
                m_question.settings.find({claim.member, m_question.items[item].what.exercise});
            if (setting != m_question.settings.end()) {
                claim.setting = setting->second;
            }
            claims.push_back(std::move(claim));
        }
        return claims;
    }

    static std::vector<RackPlace> placesOf(const RackSharing& sharing,
                                           const std::vector<RackClaim>& claims)
    {
        std::vector<RackPlace> places;
        int number = 0;
        for (const SharedRack& rack : sharing.racks) {
            ++number;
            int turn = 0;
            for (const RackTurn& one : rack.turns) {
                places.push_back({claims[one.lifter].member, number, ++turn});
            }
        }
        return places;
    }

    [[nodiscard]] int stationOf(std::size_t item, std::size_t person) const
    {
        const MemberId member = m_question.people[person].member.id;
        for (const BlockPlan& block : m_answer.blocks) {
            for (const RackRound& round : block.rounds) {
                for (const RackPlace& place : round.places) {
                    if (round.item == item && place.member == member) {
                        return place.rack;
                    }
                }
            }
        }
        return kFirstOwnStation + static_cast<int>(person);
    }

    void findWants()
    {
        for (std::size_t item = 0; item < m_question.items.size(); ++item) {
            addWants(item);
            addToBook(item);
        }
        m_answer.book.kit = *m_question.kit;
        m_answer.book.day = m_question.on;
        m_answer.book = withLoads(std::move(m_answer.book));
        m_answer.clashes = findClashes(m_answer.wants, m_answer.book);
    }

    // Halves are at the racks one after the other, so that a half's plates clash only within it;
    // the second half's rounds come after all others.
    void addWants(std::size_t item)
    {
        const std::size_t people = m_question.people.size();
        const PlanItem& of = m_question.items[item];
        const bool isHalved = blockOf(m_question.blocks, of.block).halves == 2;
        for (std::size_t person = 0; person < people; ++person) {
            const auto load = targetAt(item, person).load();
            if (!load) {
                continue;
            }
            const bool isSecond = isHalved && person >= (people + 1) / 2;
            const auto round = item + 1 + (isSecond ? m_question.items.size() : std::size_t{0});
            m_answer.wants.push_back({m_question.people[person].member.id,
                                      stationOf(item, person),
                                      static_cast<int>(round),
                                      of.what.exercise,
                                      load->load});
        }
    }

    void addToBook(std::size_t item)
    {
        const Exercise* exercise = exerciseOf(item);
        if (exercise == nullptr || m_answer.book.find(exercise->id) != nullptr) {
            return;
        }
        FloorExercise made;
        made.exercise = *exercise;
        made.needs = isOnRacks(item) ? StationKind::Rack : StationKind::Open;
        m_answer.book.exercises.push_back(std::move(made));
    }

    const MeetingPlanQuestion& m_question;
    MeetingPlanAnswer m_answer;
};

} // namespace

std::optional<AvailableLoad> PlannedTarget::load() const
{
    return loadOf(target);
}

MeetingPlanAnswer planMeeting(const MeetingPlanQuestion& question)
{
    return Planner(question).plan();
}

} // namespace levelbar
