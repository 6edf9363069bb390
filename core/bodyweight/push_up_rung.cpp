// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bodyweight/push_up_rung.h"

#include "core/bodyweight/out_of_range.h"

#include <algorithm>
#include <optional>
#include <vector>

namespace levelbar {

namespace {

constexpr int kMostHoles = 99; // as a logged hole
constexpr Length kMostLowest = Length::ofMillimetres(2000);
constexpr Length kLeastPitch = Length::ofMillimetres(1);
constexpr Length kMostPitch = Length::ofMillimetres(300);
constexpr double kMostAim = 60.0;

std::optional<Fault> fault(const RackHoles& rack, const RepsWanted& wanted)
{
    if (rack.count < 1 || rack.count > kMostHoles) {
        return outOfRange(rack.count, 1, kMostHoles, 0).value();
    }
    if (rack.lowest < Length{} || rack.lowest > kMostLowest) {
        return outOfRange(rack.lowest.metres(), 0.0, kMostLowest.metres(), 4).value();
    }
    if (rack.pitch < kLeastPitch || rack.pitch > kMostPitch) {
        return outOfRange(rack.pitch.metres(), kLeastPitch.metres(), kMostPitch.metres(), 4)
            .value();
    }
    if (!(wanted.fewest >= 1.0 && wanted.fewest <= kMostAim)) {
        return outOfRange(wanted.fewest, 1.0, kMostAim, 1).value();
    }
    if (!(wanted.most >= wanted.fewest && wanted.most <= kMostAim)) {
        return outOfRange(wanted.most, wanted.fewest, kMostAim, 1).value();
    }
    return std::nullopt;
}

RungFit fitOf(const std::vector<Estimate>& reps, std::size_t chosen, const RepsWanted& wanted)
{
    if (reps.at(chosen).value < wanted.fewest) {
        return RungFit::AllTooHard;
    }
    if (reps.at(chosen).value <= wanted.most) {
        return RungFit::InRange;
    }
    return chosen == 0 ? RungFit::AllTooEasy : RungFit::BetweenHoles;
}

// reps: by hole, the lowest first; not empty.
std::size_t choose(const std::vector<Estimate>& reps, const RepsWanted& wanted)
{
    const double middle = (wanted.fewest + wanted.most) / 2.0;
    const auto easier = std::find_if(
        reps.begin(), reps.end(), [middle](const Estimate& at) { return at.value >= middle; });
    if (easier == reps.end()) {
        return reps.size() - 1;
    }
    const auto chosen = static_cast<std::size_t>(easier - reps.begin());
    const bool isTooEasy = easier->value > wanted.most;
    if (isTooEasy && chosen > 0 && reps.at(chosen - 1).value >= wanted.fewest) {
        return chosen - 1;
    }
    return chosen;
}

} // namespace

Result<RungChoice> chooseHole(const RackHoles& rack,
                              const Presser& presser,
                              const PersonalLever& lever,
                              const PushUpCapacity& capacity,
                              const RepsWanted& wanted)
{
    if (const auto wrong = fault(rack, wanted)) {
        return tl::unexpected(*wrong);
    }
    const auto bar = [&rack](int hole) {
        return PushUp{PushUpKind::HandsRaised, rack.height(hole), {}};
    };
    std::vector<Estimate> reps;
    for (int hole = 1; hole <= rack.count; ++hole) {
        if (hole > 1 && rack.height(hole) > highestHands(presser.stature)) {
            break;
        }
        const auto expected = expectedPushUps(presser, lever, capacity, bar(hole));
        if (!expected) {
            return tl::unexpected(expected.error());
        }
        reps.push_back(*expected);
    }
    const std::size_t chosen = choose(reps, wanted);
    RungChoice choice;
    choice.hole = static_cast<int>(chosen) + 1;
    choice.height = rack.height(choice.hole);
    choice.reps = reps.at(chosen);
    choice.fit = fitOf(reps, chosen, wanted);
    const auto load = pushUpLoad(presser, lever, bar(choice.hole));
    if (!load) {
        return tl::unexpected(load.error());
    }
    choice.load = load->load;
    return choice;
}

} // namespace levelbar
