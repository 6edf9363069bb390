// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/calibration_words.h"

#include <fmt/format.h>

#include <cmath>

namespace levelbar {

namespace {

std::string inHundred(double share)
{
    return fmt::format("{:.0f}", 100.0 * share);
}

std::string_view peopleWord(std::optional<Experience> experience)
{
    if (!experience) {
        return "people of unknown experience";
    }
    switch (*experience) {
    case Experience::Novice:
        return "novices";
    case Experience::Intermediate:
        return "intermediate people";
    case Experience::Advanced:
        break;
    }
    return "advanced people";
}

void addLean(std::vector<Phrase>& all, const RangeScore& score, std::string_view who)
{
    const std::string reps = fmt::format("{:.1f}", std::abs(score.leanReps));
    switch (loadLean(score)) {
    case LoadLean::TooHeavy:
        all.push_back({"For %2, loads were about %1 reps too heavy.", {reps, std::string(who)}});
        break;
    case LoadLean::TooLight:
        all.push_back({"For %2, loads were about %1 reps too light.", {reps, std::string(who)}});
        break;
    case LoadLean::NotClear:
        break;
    }
}

} // namespace

std::vector<Phrase> calibrationPhrases(const Calibration& calibration)
{
    const RangeScore& score = calibration.all;
    if (score.checks == 0) {
        return {{"Nothing to judge by yet: no set that was counted, with the load planned and its "
                 "reserve told, had a range given before.",
                 {}}};
    }
    std::vector<Phrase> all = {{"%1 of %2 sets fell inside the range given before (%3 in 100, %4 "
                                "to %5; %6 were promised).",
                                {std::to_string(score.inside),
                                 std::to_string(score.checks),
                                 inHundred(score.share.value),
                                 inHundred(score.share.low),
                                 inHundred(score.share.high),
                                 inHundred(kLevel)}}};
    addLean(all, score, "everybody together");
    if (calibration.byExperience.size() > 1) {
        for (const auto& [experience, group] : calibration.byExperience) {
            addLean(all, group, peopleWord(experience));
        }
    }
    if (all.size() == 1) {
        all.push_back({"No lean to one side that we can see.", {}});
    }
    return all;
}

} // namespace levelbar
