// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exercise/ladder.h"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

namespace levelbar {

namespace {

// A gate's number and what it may be, both ends included.
struct Bound {
    int value;
    int lowest;
    int highest;
};

std::optional<Fault> faultOfGates(const Rung& rung)
{
    constexpr int kMostAmount = 600;
    constexpr int kMostTimes = 10;
    constexpr int kMostLoadPercent = 300;
    constexpr int kWorstPain = 10;
    constexpr int kMostDays = 365;
    const std::array<Bound, 8> bounds = {{{rung.up.amount, 1, kMostAmount},
                                          {rung.up.sets, 1, kMostTimes},
                                          {rung.up.sessions, 1, kMostTimes},
                                          {rung.up.loadPercent, 0, kMostLoadPercent},
                                          {rung.down.pain, 1, kWorstPain},
                                          {rung.down.daysAway, 1, kMostDays},
                                          {rung.down.fewerThan, 1, rung.up.amount},
                                          {rung.down.sessions, 1, kMostTimes}}};
    for (const auto& [value, lowest, highest] : bounds) {
        if (value < lowest || value > highest) {
            return Fault{FaultCode::OutOfRange,
                         {std::to_string(value), std::to_string(lowest), std::to_string(highest)}};
        }
    }
    return std::nullopt;
}

std::optional<Fault>
faultOfRung(const Rung& rung, Pattern pattern, std::span<const Exercise> exercises)
{
    const auto found =
        std::find_if(exercises.begin(), exercises.end(), [&](const Exercise& exercise) {
            return exercise.key == rung.exerciseKey;
        });
    if (found == exercises.end()) {
        return Fault{FaultCode::UnknownExercise, {excerpt(rung.exerciseKey)}};
    }
    if (found->pattern != pattern) {
        return Fault{FaultCode::NotOneOf,
                     {std::string(patternWord(found->pattern)), std::string(patternWord(pattern))}};
    }
    if (rung.source.empty()) {
        return Fault{FaultCode::Empty, {}};
    }
    return faultOfGates(rung);
}

} // namespace

Result<Ladder> checkLadder(Ladder ladder, std::span<const Exercise> exercises)
{
    if (ladder.key.empty() || ladder.name.empty() || ladder.rungs.size() < 2) {
        return refuse(FaultCode::Empty);
    }
    if (ladder.rungs.size() > kMostRungs) {
        return refuse(FaultCode::OutOfRange,
                      {std::to_string(ladder.rungs.size()), "2", std::to_string(kMostRungs)});
    }
    std::set<std::pair<std::string_view, std::string_view>> seen;
    for (const Rung& rung : ladder.rungs) {
        if (const auto fault = faultOfRung(rung, ladder.pattern, exercises)) {
            return tl::unexpected(*fault);
        }
        if (!seen.emplace(rung.exerciseKey, rung.setting).second) {
            return refuse(FaultCode::RepeatedPiece, {excerpt(rung.exerciseKey)});
        }
    }
    return ladder;
}

Result<std::vector<Ladder>> checkLadders(std::vector<Ladder> ladders,
                                         std::span<const Exercise> exercises)
{
    std::set<std::string_view> keys;
    for (const Ladder& ladder : ladders) {
        if (const auto checked = checkLadder(ladder, exercises); !checked) {
            return tl::unexpected(checked.error());
        }
        if (!keys.insert(ladder.key).second) {
            return refuse(FaultCode::RepeatedPiece, {excerpt(ladder.key)});
        }
    }
    return ladders;
}

} // namespace levelbar
