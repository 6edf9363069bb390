// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command.h"
#include "app/cli/json_number.h"
#include "app/cli/json_print.h"
#include "app/cli/table.h"
#include "core/review/calibration.h"
#include "core/review/calibration_words.h"
#include "storage/answered_plans.h"
#include "storage/library_store.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace levelbar::cli {

namespace {

using Json = nlohmann::ordered_json;

constexpr int kUsualDays = 56;

Json scoreJson(const RangeScore& score)
{
    const bool isKnown = score.checks > 0;
    const auto number = [isKnown](double value, int decimals) {
        return isKnown ? Json(rounded(value, decimals)) : Json();
    };
    return {{"sets", score.checks},
            {"people", score.people},
            {"inside", score.inside},
            {"share", number(score.share.value, 3)},
            {"share_low", number(score.share.low, 3)},
            {"share_high", number(score.share.high, 3)},
            {"lean_reps", number(score.leanReps, 2)},
            {"lean_low", score.lean ? Json(rounded(score.lean->low, 2)) : Json()},
            {"lean_high", score.lean ? Json(rounded(score.lean->high, 2)) : Json()}};
}

std::string_view levelWord(std::optional<Experience> experience)
{
    return experience ? experienceWord(*experience) : std::string_view("unknown");
}

Json calibrationJson(const Calibration& calibration, const Library& library, Day first, Day last)
{
    Json exercises = Json::array();
    for (const auto& [id, score] : calibration.byExercise) {
        Json entry = {{"exercise", library.exercise(id)->name}};
        entry.update(scoreJson(score));
        exercises.push_back(entry);
    }
    Json levels = Json::array();
    for (const auto& [experience, score] : calibration.byExperience) {
        Json entry = {{"level_of_person", levelWord(experience)}};
        entry.update(scoreJson(score));
        levels.push_back(entry);
    }
    Json all = {{"from", isoText(first)}, {"to", isoText(last)}, {"level", kLevel}};
    all.update(scoreJson(calibration.all));
    all["not_read"] = calibration.unread;
    all["by_exercise"] = exercises;
    all["by_level"] = levels;
    return all;
}

void addRow(Table& table, std::string_view name, const RangeScore& score)
{
    table.add({std::string(name),
               std::to_string(score.checks),
               std::to_string(score.people),
               fmt::format("{:.0f} %", 100.0 * score.share.value),
               fmt::format("{:.0f} to {:.0f} %", 100.0 * score.share.low, 100.0 * score.share.high),
               score.lean ? fmt::format("{:+.1f} ({:+.1f} to {:+.1f})",
                                        score.leanReps,
                                        score.lean->low,
                                        score.lean->high)
                          : fmt::format("{:+.1f}", score.leanReps)});
}

void printCalibration(const Calibration& calibration, const Library& library, Day first, Day last)
{
    fmt::print("How right were we, {} to {}\n\n", isoText(first), isoText(last));
    fmt::print("{}", wrapped(sentence(calibrationPhrases(calibration)), 2));
    if (calibration.all.checks == 0) {
        return;
    }
    Table table({{"", Table::Align::Left},
                 {"Sets", Table::Align::Right},
                 {"People", Table::Align::Right},
                 {"Inside", Table::Align::Right},
                 {"Nine times in ten", Table::Align::Right},
                 {"Reps beyond those expected", Table::Align::Right}});
    for (const auto& [id, score] : calibration.byExercise) {
        addRow(table, library.exercise(id)->name, score);
    }
    for (const auto& [experience, score] : calibration.byExperience) {
        addRow(table, levelWord(experience), score);
    }
    fmt::print("\n{}", table.text());
}

} // namespace

int runHowRight(const HowRightOptions& options, const Clock& clock)
{
    const Day last = options.last.value_or(clock.today);
    const Day first = options.first.value_or(last - (kUsualDays - 1));
    if (last < first) {
        fmt::print(stderr, "The period ends on {}, before {}.\n", isoText(last), isoText(first));
        return kWrongUsage;
    }
    const storage::Logbook logbook = openForReading(options.logbook, clock);
    const Library library = storage::LibraryStore(logbook).all();
    const Calibration calibration = calibrationOf(storage::answeredPlans(logbook, first, last));
    if (options.json) {
        printJson(calibrationJson(calibration, library, first, last));
    } else {
        printCalibration(calibration, library, first, last);
    }
    return kDone;
}

} // namespace levelbar::cli
