// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/push_up_target.h"

#include "app/cli/command.h"
#include "app/cli/json_number.h"
#include "app/cli/table.h"
#include "core/bodyweight/push_up_words.h"
#include "storage/scale_store.h"
#include "storage/set_store.h"
#include "storage/setup_store.h"
#include "storage/station_store.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace levelbar::cli {

namespace {

using Json = nlohmann::ordered_json;

constexpr double kRange = 2.0; // reps to the end, either way

struct RackOfPerson {
    RackHoles holes;
    bool isAssumed = false;
};

// The rack of the person's card, else the gym's first.
RackOfPerson rackFor(const PushUpTargetQuestion& asked)
{
    const Stations stations = storage::StationStore(asked.logbook).all();
    if (stations.racks.empty()) {
        return {assumedRack().holes, true};
    }
    const auto card =
        storage::SetupStore(asked.logbook).find(asked.history.member.id, asked.exercise.id);
    const Rack* rack = card && card->rack ? stations.rack(*card->rack) : nullptr;
    return {rack == nullptr ? stations.racks.front().holes : rack->holes, false};
}

// What the exercise asked for is: the proposed hole, or one of the others. None for hand-release
// push-ups, whose reps are a scale of their own.
const PushUpRung* rungOf(const PushUpReview& review, PushUpKind kind)
{
    if (kind == PushUpKind::HandsRaised) {
        return review.proposed ? &*review.proposed : nullptr;
    }
    const auto found =
        std::find_if(review.others.begin(), review.others.end(), [kind](const PushUpRung& rung) {
            return rung.pushUp.kind == kind;
        });
    return found == review.others.end() ? nullptr : &*found;
}

std::vector<std::string>
basisOf(const PushUpReview& review, const RepsWanted& wanted, bool isRackAssumed)
{
    std::vector<std::string> all = {sentence(nextPhrases(review, wanted)),
                                    sentence(basisPhrases(review))};
    if (isRackAssumed) {
        all.emplace_back("No rack is known: holes 5 cm apart from 30 cm up are assumed.");
    }
    return all;
}

Json json(const PushUpTargetQuestion& asked,
          const PushUpRung& rung,
          const std::vector<std::string>& basis)
{
    const double height = 100.0 * rung.pushUp.height.metres();
    return {{"member_id", asked.history.member.code},
            {"exercise", asked.exercise.name},
            {"side", "both"},
            {"reps", asked.question.reps},
            {"rir", asked.question.reserve.reps()},
            {"load_kg", rounded(rung.load.value, 3)},
            {"low_kg", rounded(rung.load.low, 3)},
            {"high_kg", rounded(rung.load.high, 3)},
            {"level", rung.load.level},
            {"count", rung.load.count},
            {"hole", rung.hole ? Json(*rung.hole) : Json()},
            {"hand_height_cm", rounded(height, 2)},
            {"reps_to_end", rounded(rung.reps->value, 2)},
            {"reps_to_end_low", rounded(rung.reps->low, 2)},
            {"reps_to_end_high", rounded(rung.reps->high, 2)},
            {"basis", fmt::format("{}", fmt::join(basis, " "))}};
}

} // namespace

std::optional<int> sayPushUpTarget(const PushUpTargetQuestion& asked, bool isJson)
{
    const MemberId member = asked.history.member.id;
    const auto sets = storage::SetStore(asked.logbook).ofMember(member);
    const auto readings = storage::ScaleStore(asked.logbook).ofMember(member);
    const RackOfPerson rack = rackFor(asked);
    const double toEnd = asked.question.reps + asked.question.reserve.reps();
    PushUpQuestion question;
    question.rack = rack.holes;
    question.on = asked.question.on;
    question.wanted = {std::max(1.0, toEnd - kRange), toEnd + kRange};
    const PushUpReview review =
        reviewPushUps({asked.history, asked.library, sets, readings, std::nullopt}, question);
    const PushUpRung* rung = rungOf(review, *pushUpKindOf(asked.exercise.key));
    if (rung == nullptr || !rung->reps) {
        return std::nullopt;
    }
    const auto basis = basisOf(review, question.wanted, rack.isAssumed);
    if (isJson) {
        fmt::print("{}\n", json(asked, *rung, basis).dump(2));
        return kDone;
    }
    const Member& person = asked.history.member;
    const std::string who = person.name.empty() ? person.code : person.code + "  " + person.name;
    fmt::print("{}\n{}\n\n", cutTo(who, kPageWidth), asked.exercise.name);
    fmt::print("{}\n", wrapped(sentence(phrases(*rung)), 2));
    for (const std::string& paragraph : basis) {
        fmt::print("{}", wrapped(paragraph, 2));
    }
    fmt::print("\nInforms a trained instructor; does not diagnose.\n");
    return kDone;
}

} // namespace levelbar::cli
