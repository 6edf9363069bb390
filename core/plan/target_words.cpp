// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/target_words.h"

#include <fmt/format.h>

#include <cmath>

namespace levelbar {

namespace {

constexpr double kHeavyReps = 4.0; // reps to the end at or under which a miss is near

std::string typed(const Mass& mass)
{
    return mass.number() + " " + std::string(unitWord(mass.unit()));
}

std::string whole(double value)
{
    return fmt::format("{:.0f}", value);
}

std::vector<Phrase> whyCautious(Caution caution)
{
    switch (caution) {
    case Caution::None:
        return {};
    case Caution::NeverDone:
        return {{"Never done: a cautious guess from a related lift.", {}}};
    case Caution::New:
        return {{"Fewer than three counted days: the cautious side of the estimate.", {}}};
    case Caution::Returning:
        return {{"Back after more than three weeks: the cautious side of the estimate.", {}}};
    case Caution::Uncertain:
        return {{"The estimate is wide: its cautious side is taken.", {}}};
    }
    return {};
}

// Why, and what would change it.
std::vector<Phrase> why(const Target& target)
{
    const Progression& p = target.progression;
    const std::string last = p.last ? typed(*p.last) : std::string();
    const std::string day = p.lastDay ? shortText(*p.lastDay) : std::string();
    const std::string jump = whole(p.jumpPercent);
    const std::string aim = std::to_string(target.reps);
    const std::string more = std::to_string(target.reps + 2);
    switch (p.rule) {
    case ProgressionRule::Pain:
        return {{"Pain %1 of 10 on %2: about a tenth lighter, or another exercise. Pain stops the "
                 "set; what stays, spreads or comes back is not ours to train.",
                 {std::to_string(p.pain), day}},
                {"A session without pain lifts this.", {}}};
    case ProgressionRule::Return:
        return {
            {"Last done on %1: lighter than the %2 of then, the estimate permitting.", {day, last}},
            {"One counted session sets it anew.", {}}};
    case ProgressionRule::NothingBefore:
        return {{"The first time: look at the first set before the second.", {}}};
    case ProgressionRule::OtherReps:
        return {
            {"Last time (%1) was for other reps: this load comes from the estimate alone.", {day}}};
    case ProgressionRule::MissedTwice:
        return {{"Two sessions running fell short of %1 reps with %2.", {aim, last}},
                {"Two sessions at the aim bring it back.", {}}};
    case ProgressionRule::Deload:
        return {{"Two sessions running fell short after five weeks without a lighter one: a "
                 "lighter week, about a third of the sets left out.",
                 {}},
                {"The week after starts from the estimate again.", {}}};
    case ProgressionRule::HarderThanMeant:
        return {{"By the estimate %1 leaves less in reserve than meant.", {last}},
                {"Sets with more in reserve raise it again.", {}}};
    case ProgressionRule::NotCounted:
        return {{"No set of the last three sessions was counted: a raise needs one.", {}},
                {"Count one set and say what was left.", {}}};
    case ProgressionRule::NotClean:
        return {{"The last session was not clean: a raise waits for clean sets.", {}},
                {"A clean session frees it.", {}}};
    case ProgressionRule::RepsFirst:
        return {{"The next load here is %1 % up: reps first.", {jump}},
                {"%1 reps in the last set of two sessions running raise it.", {more}}};
    case ProgressionRule::TwoForTwo:
        return {{"Two reps or more beyond the aim in the last set, two sessions running.", {}},
                {"Falling short twice would take it back.", {}}};
    case ProgressionRule::EasierThanMeant:
        return {{"With %1 at least two more were left in reserve than meant.", {last}},
                {"Falling short twice would take it back.", {}}};
    case ProgressionRule::StrengthGrew:
        return {{"The estimate allows the next load.", {}},
                {"Falling short twice would take it back.", {}}};
    case ProgressionRule::NoHeavierPiece:
        return {{"There is nothing heavier here: more reps, or another exercise.", {}}};
    case ProgressionRule::AsPlanned:
        return {{"%1 fits the aim.", {last}},
                {"%1 reps in the last set of two sessions running raise it; falling short twice "
                 "lowers it.",
                 {more}}};
    }
    return {};
}

} // namespace

Phrase effortPhrase(Reserve reserve, EffortScale scale)
{
    if (scale == EffortScale::Rpe && isOnScale(reserve, scale)) {
        return {"at RPE %1", {effortNumber(reserve, scale)}};
    }
    return {"with %1 in reserve", {text(reserve)}};
}

std::vector<Phrase> headline(const Target& target)
{
    const Progression& p = target.progression;
    if (!p.load) {
        if (!target.lightest) {
            return {{"The gym has nothing for this exercise.", {}}};
        }
        return {{"Nothing light enough here: the lightest, %1, allows about %2 reps to the end.",
                 {typed(target.lightest->load), whole(std::max(0.0, target.lightestReps))}}};
    }
    const std::string load = typed(p.load->load);
    const std::string reps = std::to_string(p.reps);
    const std::string last = p.last ? typed(*p.last) : std::string();
    switch (p.decision) {
    case LoadDecision::Raise:
        return {{"Raise: %1 × %2, from %3.", {load, reps, last}}};
    case LoadDecision::Hold:
        return {{"Hold: %1 × %2.", {load, reps}}};
    case LoadDecision::Lower:
        return {{"Lower: %1 × %2, from %3.", {load, reps, last}}};
    case LoadDecision::Start:
        break;
    }
    return {{"Start: %1 × %2.", {load, reps}}};
}

std::vector<Phrase> loadPhrases(const Target& target, EffortScale scale)
{
    const Phrase effort = effortPhrase(target.reserve, scale);
    return {{"About %1 kg allow %2 reps %3; nine times in ten between %4 and %5.",
             {roundedToDoubt(target.load.value, target.load),
              std::to_string(target.reps),
              fill(effort.text, effort.arguments),
              roundedToDoubt(target.load.low, target.load),
              roundedToDoubt(target.load.high, target.load)}}};
}

std::vector<Phrase> curvePhrases(const Target& target)
{
    const RepsAtFourFifths& reps = target.repsAtFourFifths;
    std::vector<Phrase> all;
    if (!target.strength.isFromRelated && reps.own.count > 0) {
        all.push_back(
            {"With 80 % of the maximum about %1 reps to the end, nine times in ten %2 to %3.",
             {whole(reps.own.value), whole(reps.own.low), whole(reps.own.high)}});
    }
    if (reps.people > 0) {
        all.push_back({"Average of this gym: %1 (people it was learnt from: %2); published: 8.8.",
                       {oneDecimal(reps.average), std::to_string(reps.people)}});
    } else {
        all.push_back(
            {"Average: 8.8, as published; this gym's sets have not told its own yet.", {}});
    }
    return all;
}

std::vector<Phrase> reasonPhrases(const Target& target)
{
    std::vector<Phrase> all = why(target);
    const std::vector<Phrase> cautious = whyCautious(target.caution);
    all.insert(all.begin(), cautious.begin(), cautious.end());
    if (target.isKitAssumed) {
        all.push_back({"Nobody has said yet what this gym owns: usual bars, plates and dumbbells "
                       "are assumed.",
                       {}});
    }
    return all;
}

std::vector<Phrase> phrases(const LastMove& move)
{
    const std::string day = shortText(move.day);
    if (move.isFirst) {
        return {{"All of it rests on %1.", {day}}};
    }
    const std::string sets = std::to_string(move.sets);
    std::vector<Phrase> all;
    const std::string change = oneDecimal(std::abs(move.percent));
    if (change == "0.0") {
        all.push_back({"%1 (%2 sets) left the estimate where it was.", {day, sets}});
    } else {
        all.push_back({move.percent > 0.0 ? "%1 (%2 sets) moved the estimate up by %3 %."
                                          : "%1 (%2 sets) moved the estimate down by %3 %.",
                       {day, sets, change}});
    }
    const std::string load = Mass::ofKilograms(move.kilograms).number();
    const std::string expected = whole(std::max(0.0, move.expectedReps));
    all.push_back({move.isOnlyAtLeast
                       ? "With %1 kg at least %2 reps were in it; about %3 were expected."
                       : "With %1 kg %2 reps were in it; about %3 were expected.",
                   {load, whole(move.reps), expected}});
    return all;
}

std::string platesText(const AvailableLoad& load, Implement implement)
{
    if (implement != Implement::Barbell) {
        return {};
    }
    if (load.eachSide.empty()) {
        return "bare bar";
    }
    std::string text;
    for (const Mass& plate : load.eachSide) {
        text += (text.empty() ? "" : " + ") + plate.number();
        if (plate.unit() == MassUnit::Pound) {
            text += " lb";
        }
    }
    return text + " a side";
}

std::vector<Phrase> cautionPhrases(const Target& target)
{
    if (target.reps + target.reserve.reps() > kHeavyReps) {
        return {};
    }
    return {{"Heavy: with clearance where the house rules ask for it, a spotter or safeties, and a "
             "warm-up. Pain stops the set.",
             {}}};
}

} // namespace levelbar
