// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/sides_json.h"

#include "app/cli/json_number.h"
#include "core/review/side_words.h"

namespace levelbar::cli {

namespace {

using Json = nlohmann::ordered_json;

template <typename T> Json dayJson(const std::optional<T>& day)
{
    return day ? Json(isoText(*day)) : Json();
}

Json leftJson(const SideReview& review)
{
    if (!review.left) {
        return {};
    }
    return {{"tier", tierWord(review.left->from)},
            {"day", isoText(review.left->day)},
            {"why", sideWhyWord(review.left->why)}};
}

Json reasonJson(const SideReview& review)
{
    if (!review.reason) {
        return {};
    }
    return {{"text", review.reason->text},
            {"since", isoText(review.reason->since)},
            {"agreed_percent", rounded(review.reason->agreedPercent, 3)},
            {"new_since", review.news ? Json(isoText(review.news->day)) : Json()}};
}

Json pauseJson(const SideReview& review)
{
    if (!review.pause) {
        return {};
    }
    return {{"exercise", review.pause->exercise},
            {"day", isoText(review.pause->day)},
            {"until", isoText(review.pause->day + kPauseDays)}};
}

Json baselineJson(const SideReview& review)
{
    if (!review.baseline) {
        return {};
    }
    const Baseline& baseline = *review.baseline;
    const auto number = [](const std::optional<double>& value) {
        return value ? Json(rounded(*value, 3)) : Json();
    };
    Json json = {{"operated", sideWord(baseline.operated)},
                 {"day", isoText(baseline.surgery)},
                 {"good_before", number(baseline.goodBefore)},
                 {"operated_now", number(baseline.operatedNow)},
                 {"unit", baseline.unit}};
    if (baseline.percentOfIt) {
        json["percent"] = rounded(baseline.percentOfIt->value, 3);
        json["low"] = rounded(baseline.percentOfIt->low, 3);
        json["high"] = rounded(baseline.percentOfIt->high, 3);
    }
    return json;
}

Json indicesJson(const SideReview& review)
{
    Json indices = Json::object();
    for (const SideIndex& index : sideIndices()) {
        if (const auto value = index.value(bothSidesOf(review))) {
            indices[std::string(index.name)] = rounded(*value, 3);
        }
    }
    return indices;
}

Json planJson(const SidePlan& plan)
{
    Json load;
    if (plan.load) {
        load = rounded(plan.load->kilograms(), 5);
    }
    return {{"first", sideWord(plan.first)},
            {"open_pair", plan.isOpenPair},
            {"capped", plan.isCapped},
            {"left_sets", plan.leftSets},
            {"right_sets", plan.rightSets},
            {"load_kg", load},
            {"reps", plan.reps},
            {"text", sentence(phrases(plan))}};
}

Json lineJson(const MemberReview& member, const SideReview& side)
{
    Json line = {{"member_id", member.member.code}, {"name", member.member.name}};
    line.update(sideJson(side));
    return line;
}

Json estimateJson(const std::optional<Estimate>& estimate)
{
    if (!estimate) {
        return {};
    }
    return {{"value", rounded(estimate->value, 4)},
            {"low", rounded(estimate->low, 4)},
            {"high", rounded(estimate->high, 4)},
            {"level", estimate->level},
            {"people", estimate->count}};
}

Json slipJson(const MemberReview& member, const SlipQuestion& question)
{
    return {{"member_id", member.member.code},
            {"measure", question.measure.name},
            {"day", isoText(question.slip.day)},
            {"left", question.slip.left},
            {"right", question.slip.right},
            {"text", sentence(phrases(question))}};
}

} // namespace

Json sideJson(const SideReview& review)
{
    const Estimate& difference = review.differencePercent;
    return {{"measure", review.measure.name},
            {"difference_percent", rounded(difference.value, 3)},
            {"low_percent", rounded(difference.low, 3)},
            {"high_percent", rounded(difference.high, 3)},
            {"level", difference.level},
            {"weaker", review.weaker ? sideWord(*review.weaker) : "none"},
            {"probability_side", rounded(review.probabilitySide, 5)},
            {"threshold_percent", review.thresholdPercent},
            {"probability_beyond_threshold", rounded(review.probabilityBeyondThreshold, 5)},
            {"days", review.days},
            {"tier", tierWord(review.tier)},
            {"probability_beyond_five", rounded(review.probabilityBeyondFive, 5)},
            {"why", sideWhyWord(review.listing.why)},
            {"why_text", sentence(listingPhrases(review))},
            {"since", dayJson(review.listing.since)},
            {"since_before", review.listing.isSinceBefore},
            {"came_off", leftJson(review)},
            {"known_reason", reasonJson(review)},
            {"paused", pauseJson(review)},
            {"baseline", baselineJson(review)},
            {"trainable", review.measure.isTrainable()}};
}

Json sideListsJson(const Review& review)
{
    Json lists = {{"act", Json::array()},
                  {"look", Json::array()},
                  {"send_on", Json::array()},
                  {"paused", Json::array()},
                  {"known_reason", Json::array()}};
    Json questions = Json::array();
    for (const MemberReview& member : review.members) {
        for (const SideReview& side : member.sides) {
            const bool isKept =
                side.listing.why == SideWhy::Paused || side.listing.why == SideWhy::KnownReason;
            if (side.tier != SideTier::None || isKept) {
                const auto name = side.tier == SideTier::None ? sideWhyWord(side.listing.why)
                                                              : tierWord(side.tier);
                lists[std::string(name)].push_back(lineJson(member, side));
            }
        }
        for (const SlipQuestion& question : member.slips) {
            questions.push_back(slipJson(member, question));
        }
    }
    return {{"as_of", isoText(review.asOf)},
            {"lists", lists},
            {"questions", questions},
            {"look", review.look},
            {"act", review.act},
            {"expected_false_look", rounded(review.expectedFalseLook, 4)},
            {"expected_false_act", rounded(review.expectedFalseAct, 4)}};
}

Json memberSidesJson(const MemberReview& member, const std::vector<std::optional<SidePlan>>& plans)
{
    Json sides = Json::array();
    for (std::size_t i = 0; i < member.sides.size(); ++i) {
        Json side = sideJson(member.sides[i]);
        side["indices"] = indicesJson(member.sides[i]);
        side["plan"] = plans[i] ? planJson(*plans[i]) : Json();
        sides.push_back(std::move(side));
    }
    Json questions = Json::array();
    for (const SlipQuestion& question : member.slips) {
        questions.push_back(slipJson(member, question));
    }
    return {{"member_id", member.member.code},
            {"name", member.member.name},
            {"sides", sides},
            {"questions", questions}};
}

Json measureJson(const MeasureSteadiness& measure)
{
    return {{"measure", measure.measure.name},
            {"threshold_percent", measure.thresholdPercent},
            {"people", measure.people},
            {"people_with_two_days", measure.repeated},
            {"day_spread_percent", rounded(measure.daySpread, 4)},
            {"steadiest_percent", rounded(measure.steadiest, 4)},
            {"unsteadiest_percent", rounded(measure.unsteadiest, 4)},
            {"intraclass_correlation", estimateJson(measure.intraclass)},
            {"typical_error_percent", estimateJson(measure.typicalError)},
            {"detectable_change_percent",
             measure.detectable ? Json(rounded(*measure.detectable, 4)) : Json()}};
}

BothSides bothSidesOf(const SideReview& review)
{
    const double d = review.differencePercent.value / 100.0;
    return d >= 0.0 ? BothSides{1.0 - d, 1.0} : BothSides{1.0, 1.0 + d};
}

} // namespace levelbar::cli
