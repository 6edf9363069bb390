// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_records.h"

#include "core/base/utf8.h"
#include "core/base/words.h"
#include "core/exercise/exercise_detail.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr std::size_t kLongestReason = 200;

constexpr Words<SideEnd, 5> kEnds = {{{SideEnd::Closed, "closed"},
                                      {SideEnd::UsualDifference, "usual_difference"},
                                      {SideEnd::Pain, "pain"},
                                      {SideEnd::SentOn, "sent_on"},
                                      {SideEnd::ByHand, "by_hand"}}};

bool isOneMeasure(const MeasureKey& key)
{
    return key.exercise.has_value() != key.test.has_value();
}

std::string_view trimmed(std::string_view text)
{
    constexpr std::string_view kBlank = " \t";
    const std::size_t first = text.find_first_not_of(kBlank);
    return first == std::string_view::npos
               ? std::string_view()
               : text.substr(first, text.find_last_not_of(kBlank) + 1 - first);
}

} // namespace

std::string_view sideEndWord(SideEnd end)
{
    return wordOf(kEnds, end);
}

const KnownReason* SideRecords::reasonFor(const MeasureKey& measure, Day day) const
{
    const auto found = std::find_if(reasons.begin(), reasons.end(), [&](const KnownReason& reason) {
        return reason.measure == measure && reason.holdsOn(day);
    });
    return found == reasons.end() ? nullptr : &*found;
}

const SidePrescription* SideRecords::prescriptionFor(ExerciseId exercise, Day day) const
{
    const auto found = std::find_if(prescriptions.begin(), prescriptions.end(), [&](const auto& p) {
        return p.exercise == exercise && p.started <= day && (!p.ended || day < *p.ended);
    });
    return found == prescriptions.end() ? nullptr : &*found;
}

std::optional<Day> SideRecords::restsUntil(ExerciseId exercise, Day day) const
{
    std::optional<Day> until;
    if (prescriptionFor(exercise, day) != nullptr) {
        return until;
    }
    for (const SidePrescription& one : prescriptions) {
        const bool isLeft = one.why == SideEnd::UsualDifference || one.why == SideEnd::ByHand;
        if (one.exercise == exercise && isLeft && one.ended && *one.ended <= day &&
            day - *one.ended < kRestDays) {
            until = std::max(until.value_or(Day{}), *one.ended + kRestDays);
        }
    }
    return until;
}

Result<double> checkThreshold(double percent)
{
    if (!(percent >= kLeastThreshold && percent <= kMostThreshold)) {
        return refuse(FaultCode::OutOfRange,
                      {fmt::format("{}", percent),
                       fmt::format("{:.0f}", kLeastThreshold),
                       fmt::format("{:.0f}", kMostThreshold)});
    }
    return std::round(10.0 * percent) / 10.0;
}

Result<KnownReason> checkReason(KnownReason reason)
{
    reason.text = trimmed(reason.text);
    if (reason.text.empty()) {
        return refuse(FaultCode::Empty);
    }
    const auto length = codePoints(reason.text);
    if (!length) {
        return refuse(FaultCode::NotUtf8);
    }
    if (*length > kLongestReason) {
        return refuse(FaultCode::TooLong, {excerpt(reason.text), std::to_string(kLongestReason)});
    }
    if (holdsControl(reason.text, false)) {
        return refuse(FaultCode::ControlCharacter);
    }
    const bool isOrdered = !reason.ended || reason.since <= *reason.ended;
    if (!isOneMeasure(reason.measure) || !isOrdered || !std::isfinite(reason.agreedPercent)) {
        return refuse(FaultCode::NotInDomain,
                      {isoText(reason.since), "one exercise or one test, ended after it began"});
    }
    return reason;
}

Result<Surgery> checkSurgery(Surgery surgery)
{
    const bool isOneThing =
        surgery.area.empty() ? surgery.measure.has_value() : !surgery.measure.has_value();
    if (!isOneThing || (surgery.measure && !isOneMeasure(*surgery.measure)) ||
        surgery.side == Side::Both) {
        return refuse(FaultCode::NotInDomain,
                      {std::string(sideWord(surgery.side)), "one side of an area or of a measure"});
    }
    if (!surgery.area.empty()) {
        // checkDetail knows the areas and refuses in the same words.
        ExerciseDetail detail;
        detail.areas = {surgery.area};
        auto checked = checkDetail(std::move(detail));
        if (!checked || checked->areas.size() != 1) {
            return tl::unexpected(checked ? Fault{FaultCode::Empty, {}} : checked.error());
        }
        surgery.area = checked->areas.front();
    }
    return surgery;
}

} // namespace levelbar
