// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command.h"
#include "app/cli/json_number.h"
#include "app/cli/json_print.h"
#include "app/cli/push_up_target.h"
#include "app/cli/table.h"
#include "core/bodyweight/push_up_review.h"
#include "core/plan/target.h"
#include "core/plan/target_words.h"
#include "storage/gym_store.h"
#include "storage/history_reader.h"
#include "storage/library_store.h"
#include "storage/member_store.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace levelbar::cli {

namespace {

using Json = nlohmann::ordered_json;

std::string_view decisionWord(LoadDecision decision)
{
    switch (decision) {
    case LoadDecision::Start:
        return "start";
    case LoadDecision::Raise:
        return "raise";
    case LoadDecision::Hold:
        return "hold";
    case LoadDecision::Lower:
        break;
    }
    return "lower";
}

// Everything that stands behind the load: the doubt, the rule, what moved it last, the caution.
std::vector<std::string> basisOf(const Target& target, EffortScale scale)
{
    std::vector<std::string> all = {sentence(loadPhrases(target, scale)),
                                    sentence(curvePhrases(target)),
                                    sentence(reasonPhrases(target))};
    if (target.lastMove) {
        all.push_back(sentence(phrases(*target.lastMove)));
    }
    const auto caution = cautionPhrases(target);
    if (!caution.empty()) {
        all.push_back(sentence(caution));
    }
    return all;
}

Json platesJson(const Target& target, const Exercise& exercise)
{
    if (exercise.implement != Implement::Barbell || !target.progression.load) {
        return {};
    }
    Json plates = Json::array();
    for (const Mass& plate : target.progression.load->eachSide) {
        plates.push_back(rounded(plate.kilograms(), 5));
    }
    return plates;
}

Json targetJson(const Target& target,
                const Member& member,
                const Exercise& exercise,
                EffortScale scale)
{
    const Progression& progression = target.progression;
    Json ramp = Json::array();
    for (const WarmUpSet& set : target.ramp) {
        ramp.push_back({{"load_kg", rounded(set.load.kilograms(), 3)}, {"reps", set.reps}});
    }
    const auto kilograms = [](const auto& load) {
        return load ? Json(rounded(load->kilograms(), 3)) : Json();
    };
    return {{"member_id", member.code},
            {"exercise", exercise.name},
            {"side", sideWord(target.side)},
            {"reps", target.reps},
            {"rir", target.reserve.reps()},
            {"load_kg", rounded(target.load.value, 3)},
            {"low_kg", rounded(target.load.low, 3)},
            {"high_kg", rounded(target.load.high, 3)},
            {"level", target.load.level},
            {"count", target.load.count},
            {"rounded_load_kg", kilograms(progression.load)},
            {"percent_1rm", rounded(target.percentOfMaximum, 2)},
            {"plates_each_side_kg", platesJson(target, exercise)},
            {"warm_up", ramp},
            {"decision", decisionWord(progression.decision)},
            {"reps_asked", progression.reps},
            {"last_load_kg", kilograms(progression.last)},
            {"reps_at_80_percent",
             {{"value", rounded(target.repsAtFourFifths.own.value, 2)},
              {"low", rounded(target.repsAtFourFifths.own.low, 2)},
              {"high", rounded(target.repsAtFourFifths.own.high, 2)},
              {"average", rounded(target.repsAtFourFifths.average, 2)},
              {"people", target.repsAtFourFifths.people}}},
            {"basis", fmt::format("{}", fmt::join(basisOf(target, scale), " "))}};
}

void printTarget(const Target& target,
                 const Member& member,
                 const Exercise& exercise,
                 EffortScale scale)
{
    const std::string who = member.name.empty() ? member.code : member.code + "  " + member.name;
    fmt::print("{}\n", cutTo(who, kPageWidth));
    const std::string side =
        target.side == Side::Both ? "" : fmt::format(", {} side", sideWord(target.side));
    fmt::print("{}{}\n\n", exercise.name, side);
    fmt::print("{}", wrapped(sentence(headline(target)), 2));
    if (target.progression.load) {
        const std::string plates = platesText(*target.progression.load, exercise.implement);
        if (!plates.empty()) {
            fmt::print("  On the bar: {}\n", plates);
        }
    }
    if (!target.ramp.empty()) {
        std::string ramp;
        for (const WarmUpSet& set : target.ramp) {
            ramp += fmt::format("{}{} {} × {}",
                                ramp.empty() ? "" : ", ",
                                set.load.load.number(),
                                unitWord(set.load.load.unit()),
                                set.reps);
        }
        fmt::print("  Warm up: {}\n", ramp);
    }
    fmt::print("\n");
    for (const std::string& paragraph : basisOf(target, scale)) {
        fmt::print("{}", wrapped(paragraph, 2));
    }
    fmt::print("\nInforms a trained instructor; does not diagnose.\n");
}

} // namespace

int runTarget(const TargetOptions& options, const Clock& clock)
{
    const storage::Logbook logbook = openForReading(options.logbook, clock);
    const auto refused = [&options](const Fault& fault) {
        return atFault(options.logbook, sentence(fault));
    };
    const auto member = storage::MemberStore(logbook).find(options.member);
    if (!member) {
        return refused({FaultCode::UnknownMember, {excerpt(options.member)}});
    }
    const auto exercise = storage::LibraryStore(logbook).findExercise(options.exercise);
    if (!exercise) {
        return refused({FaultCode::UnknownExercise, {excerpt(options.exercise)}});
    }
    const storage::GymStore gym(logbook);
    const Library library = storage::LibraryStore(logbook).all();
    const TargetQuestion question{exercise->id,
                                  options.side,
                                  options.reps,
                                  options.reserve,
                                  options.on.value_or(clock.today)};
    const auto history = storage::historyOf(logbook, member->id, question.on);
    if (!history) {
        return refused({FaultCode::UnknownMember, {excerpt(options.member)}});
    }
    if (pushUpKindOf(exercise->key) && options.side.value_or(Side::Both) == Side::Both) {
        const PushUpTargetQuestion asked{logbook, *history, library, *exercise, question};
        if (const auto said = sayPushUpTarget(asked, options.json)) {
            return *said;
        }
    }
    const auto target = targetFor(*history, library, gym.kitOn(question.on), question);
    if (!target) {
        return refused(target.error());
    }
    if (options.json) {
        printJson(targetJson(*target, *member, *exercise, gym.effortScale()));
    } else {
        printTarget(*target, *member, *exercise, gym.effortScale());
    }
    return kDone;
}

} // namespace levelbar::cli
