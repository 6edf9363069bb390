// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/review_json.h"

#include "app/cli/json_number.h"
#include "app/cli/sides_json.h"

namespace levelbar::cli {

namespace {

using Json = nlohmann::ordered_json;

Json trendJson(const Trend& trend)
{
    const auto number = [&](double Estimate::*field) {
        return trend.percentPerWeek ? Json(rounded((*trend.percentPerWeek).*field, 3)) : Json();
    };
    return {{"percent_per_week", number(&Estimate::value)},
            {"low", number(&Estimate::low)},
            {"high", number(&Estimate::high)},
            {"call", trendWord(trend.call)},
            {"ask_again_on", trend.askAgainOn ? Json(isoText(*trend.askAgainOn)) : Json()}};
}

Json strengthJson(const StrengthReview& review, const Library& library)
{
    const StrengthEstimate& strength = review.strength;
    return {{"exercise", library.exercise(review.exercise)->name},
            {"side", sideWord(review.side)},
            {"one_rm_kg", rounded(strength.oneRepMax.value, 3)},
            {"low_kg", rounded(strength.oneRepMax.low, 3)},
            {"high_kg", rounded(strength.oneRepMax.high, 3)},
            {"level", strength.oneRepMax.level},
            {"count", strength.oneRepMax.count},
            {"bounds", strength.bounds},
            {"last_set", isoText(strength.lastSet)},
            {"evidence", evidenceWord(strength.evidence)},
            {"trend", trendJson(review.trend)}};
}

// change_per_week is in percent, or in the test's unit: change_unit says which.
Json testJson(const TestReview& review, const Library& library)
{
    const TestKind& test = *library.test(review.test);
    const ValueTrend& trend = review.trend;
    const auto number = [&](double Estimate::*field) {
        return trend.changePerWeek ? Json(rounded((*trend.changePerWeek).*field, 3)) : Json();
    };
    const bool isRatio = measureOf(test).scale == TrendScale::Ratio;
    const Json change = {
        {"change_per_week", number(&Estimate::value)},
        {"low", number(&Estimate::low)},
        {"high", number(&Estimate::high)},
        {"change_unit", isRatio ? "percent" : test.unit},
        {"call", trendWord(trend.call)},
        {"ask_again_on", trend.askAgainOn ? Json(isoText(*trend.askAgainOn)) : Json()}};
    return {{"test", test.name},
            {"side", sideWord(review.side)},
            {"last_value", rounded(review.last.value, 3)},
            {"unit", test.unit},
            {"last_day", isoText(review.last.day)},
            {"count", trend.valuesSeen},
            {"trend", change}};
}

Json memberJson(const MemberReview& member, const Library& library)
{
    Json strength = Json::array();
    for (const StrengthReview& review : member.strength) {
        strength.push_back(strengthJson(review, library));
    }
    Json tests = Json::array();
    for (const TestReview& review : member.tests) {
        tests.push_back(testJson(review, library));
    }
    Json sides = Json::array();
    for (const SideReview& review : member.sides) {
        sides.push_back(sideJson(review));
    }
    Json attention = Json::array();
    for (const Attention& reason : member.attention) {
        attention.push_back({{"kind", attentionWord(reason.kind)}, {"text", sentence(reason)}});
    }
    return {{"member_id", member.member.code},
            {"name", member.member.name},
            {"last_seen", member.lastSeen ? Json(isoText(*member.lastSeen)) : Json()},
            {"strength", strength},
            {"tests", tests},
            {"sides", sides},
            {"attention", attention}};
}

} // namespace

Json reviewJson(const Review& review, const Library& library, const std::set<MemberId>& only)
{
    Json members = Json::array();
    for (const MemberReview& member : review.members) {
        if (only.empty() || only.contains(member.member.id)) {
            members.push_back(memberJson(member, library));
        }
    }
    return {{"as_of", isoText(review.asOf)},
            {"members", members},
            {"look", review.look},
            {"act", review.act},
            {"expected_false_look", rounded(review.expectedFalseLook, 4)},
            {"expected_false_act", rounded(review.expectedFalseAct, 4)}};
}

} // namespace levelbar::cli
