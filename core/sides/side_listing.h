// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/estimate.h"
#include "core/base/side.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar {

// What stands beside a left/right difference: which list it is on, why, since when, and what keeps
// it off. The words are in core/review/side_words.h.

// On screen: no clear side, check again, work on it, send on.
enum class SideTier { None, Look, Act, SendOn };

[[nodiscard]] std::string_view tierWord(SideTier tier); // "none", "look", "act", "send_on"

// Why it is on its list or on none, by what is known of this person alone: who else is on the list
// changes no word of it.
enum class SideWhy {
    OneDay,          // a single look is never listed
    NotSure,         // not sure enough for a list
    BeyondFive,      // check again: surely enough over 5 %
    BeyondThreshold, // work on it: surely enough over the threshold
    Hurts,           // send on: pain in the measure within four weeks, with a clear side
    Jump,            // send on: new within four weeks, not explained by what was seen before
    KnownReason,     // agreed with the instructor, and nothing new since
    Paused,          // pain within two weeks in the measure or in what stresses the same area
};

// "one_day", "not_sure", "beyond_five", "beyond_threshold", "hurts", "jump", "known_reason",
// "paused".
[[nodiscard]] std::string_view sideWhyWord(SideWhy why);

// Days as far back as eight weeks; what began earlier is told as "before".
struct SideListing {
    SideWhy why = SideWhy::OneDay;
    std::optional<Day> since;   // on this list since; nothing on none but for a reason or a pause
    bool isSinceBefore = false; // it was there already eight weeks ago
};

// When and why the name last came off a list, within eight weeks.
struct SideLeaving {
    SideTier from = SideTier::Look;
    Day day;
    SideWhy why = SideWhy::NotSure;
};

// A day on which the measure hurt, or an exercise that stresses the same area.
struct PainDay {
    Day day;
    std::string exercise;
    std::string area; // what both stress; empty: it was this very measure

    [[nodiscard]] bool isOwn() const { return area.empty(); }
};

// The verdict rests until this long after the last pain: common practice, no source.
inline constexpr int kPauseDays = 14;

// What is new although a reason is known.
enum class SideNews { Pain, Jump, Larger };

struct SideNewsDay {
    SideNews what = SideNews::Pain;
    Day day;
};

// The difference of the last four weeks against what the earlier days made likely, in percent as
// in SideReview.
struct SideJump {
    double fromPercent = 0.0;
    double toPercent = 0.0;
};

// The operated side now, over the good side before the operation: see Surgery.
struct Baseline {
    Side operated = Side::Left;
    Day surgery;
    std::string unit;                  // of the two values
    std::optional<double> goodBefore;  // mean of its three best days in the year before
    std::optional<double> operatedNow; // mean of its last three days since
    int daysNow = 0;                   // of `operatedNow`
    int daysBefore = 0;                // of `goodBefore`
    double logPercent = 0.0; // 100 ln of their ratio; below 0: the operated side is weaker
    std::optional<Estimate> percentOfIt; // nothing while one of the two is not known
};

// What an open pair said of the difference.
struct OpenPairVerdict {
    Day day;
    Side first = Side::Left;           // which side started
    double probabilityUnderFive = 0.0; // after it
};

// A pair too far apart to be believed: an entry slip is likelier. It counts for nothing until it is
// corrected.
struct SideSlip {
    Day day;
    std::string left; // as typed: "40 kg", "8 x 14 kg"
    std::string right;

    friend bool operator==(const SideSlip&, const SideSlip&) = default;
};

} // namespace levelbar
