// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/review_json.h"

#include <cmath>

namespace levelbar::cli {

namespace {

using Json = nlohmann::ordered_json;

// Decimals that carry nothing are left out; -0 becomes 0.
double rounded(double value, int decimals)
{
    const double scale = std::pow(10.0, decimals);
    const double result = std::round(value * scale) / scale;
    return result == 0.0 ? 0.0 : result;
}

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
            {"tier", tierWord(review.tier)}};
}

Json memberJson(const MemberReview& member, const Library& library)
{
    Json strength = Json::array();
    for (const StrengthReview& review : member.strength) {
        strength.push_back(strengthJson(review, library));
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
