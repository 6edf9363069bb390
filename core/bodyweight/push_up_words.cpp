// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bodyweight/push_up_words.h"

#include "core/base/number.h"

#include <fmt/format.h>

namespace levelbar {

namespace {

constexpr double kManyReps = 30.0; // above, the number says nothing to anybody

std::string whole(double value)
{
    return fmt::format("{:.0f}", value + 0.0);
}

std::string_view loadTemplate(const PushUpRung& rung)
{
    switch (rung.pushUp.kind) {
    case PushUpKind::Knees:
        return "On the knees: about %1 kg (%2 to %3)";
    case PushUpKind::Wall:
        return "At the wall: about %1 kg (%2 to %3)";
    case PushUpKind::HandsRaised:
        return rung.hole ? "Hole %4 (%5): about %1 kg (%2 to %3)"
                         : "Hands at %5: about %1 kg (%2 to %3)";
    case PushUpKind::Floor:
    case PushUpKind::HandRelease:
    case PushUpKind::FeetRaised:
        break;
    }
    return "Floor: about %1 kg (%2 to %3)";
}

Phrase fitPhrase(const PushUpRung& rung, const RepsWanted& wanted)
{
    const std::vector<std::string> range = {whole(wanted.fewest), whole(wanted.most)};
    switch (rung.fit) {
    case RungFit::InRange:
        return {"This is the hole for %1 to %2 reps.", range};
    case RungFit::BetweenHoles:
        return {"No hole gives %1 to %2 reps: this is the hardest that is easy enough.", range};
    case RungFit::AllTooEasy:
        return {"The lowest hole gives more than %2 reps: the floor, or more mass, comes next.",
                range};
    case RungFit::AllTooHard:
        break;
    }
    return {"The highest hole in reach gives fewer than %1 reps: knees or the wall come first.",
            range};
}

} // namespace

std::string centimetres(Length length)
{
    return decimalText(length.tenthMillimetres, 2) + " cm";
}

std::vector<Phrase> phrases(const PushUpRung& rung)
{
    std::vector<std::string> arguments = {
        whole(rung.load.value), whole(rung.load.low), whole(rung.load.high)};
    if (rung.pushUp.kind == PushUpKind::HandsRaised) {
        arguments.push_back(std::to_string(rung.hole.value_or(0)));
        arguments.push_back(centimetres(rung.pushUp.height));
    }
    std::vector<Phrase> all = {{loadTemplate(rung), std::move(arguments)}};
    if (!rung.reps) {
        return all;
    }
    if (rung.reps->value < 1.0) {
        all.push_back({"– not yet a single rep expected.", {}});
    } else if (rung.reps->value > kManyReps) {
        all.push_back({"– more than %1 reps to the end.", {whole(kManyReps)}});
    } else {
        all.push_back({"– about %1 reps to the end (%2 to %3).",
                       {whole(rung.reps->value), whole(rung.reps->low), whole(rung.reps->high)}});
    }
    return all;
}

std::vector<Phrase> nextPhrases(const PushUpReview& review, const RepsWanted& wanted)
{
    if (review.lacksStature) {
        return {{"Stature is not known: a push-up's load needs it.", {}}};
    }
    if (review.lacksMass) {
        return {{"Body mass is not known: a push-up's load needs it.", {}}};
    }
    if (!review.proposed) {
        return {{"Count one set of push-ups with its reserve, at a known hole or on the floor, and "
                 "a hole can be proposed.",
                 {}}};
    }
    std::vector<Phrase> all = phrases(*review.proposed);
    all.push_back(fitPhrase(*review.proposed, wanted));
    return all;
}

std::vector<Phrase> basisPhrases(const PushUpReview& review)
{
    if (review.lacksStature || review.lacksMass) {
        return {};
    }
    std::vector<Phrase> all;
    if (review.telling) {
        const TellingSet& set = *review.telling;
        const std::string reserve = text(set.reserve);
        if (set.hole) {
            all.push_back({"Rests on %1 reps with %2 in reserve at hole %3 on %4.",
                           {std::to_string(set.reps),
                            reserve,
                            std::to_string(*set.hole),
                            shortText(set.day)}});
        } else {
            all.push_back({"Rests on %1 reps with %2 in reserve on %3.",
                           {std::to_string(set.reps), reserve, shortText(set.day)}});
        }
    }
    if (review.isFromBench) {
        all.push_back({"Guessed from the bench press: it tells only where to begin.", {}});
    }
    const std::string mass =
        review.bodyMass.number() + " " + std::string(unitWord(review.bodyMass.unit()));
    if (review.bodyMassDay) {
        all.push_back({"Body mass %1 on %2.", {mass, shortText(*review.bodyMassDay)}});
    } else {
        all.push_back({"Body mass %1, at intake.", {mass}});
    }
    if (review.lever.readings == 0) {
        all.push_back({"No scale was read: the average build is taken.", {}});
    } else {
        all.push_back({"Readings of the scale: %1.", {std::to_string(review.lever.readings)}});
    }
    if (review.refusedReadings > 0) {
        all.push_back({"Passed over, as they can hardly be right: %1 readings.",
                       {std::to_string(review.refusedReadings)}});
    }
    return all;
}

} // namespace levelbar
