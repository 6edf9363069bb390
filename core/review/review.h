// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"
#include "core/review/history.h"
#include "core/sides/side_difference.h"
#include "core/strength/strength.h"
#include "core/trend/trend.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace levelbar {

// What can call for the instructor's attention. The order is the order of the lists: safety
// first.
enum class AttentionKind {
    Pain,
    Imbalance,
    Falling,
    NoGain,
    Absence,
    LoadJump,
    Retest,
    Clearance,
    TargetMissed,
};

// One reason to look at a person: a code and the words that fill its template.
struct Attention {
    AttentionKind kind = AttentionKind::Pain;
    std::vector<std::string> arguments;
    double certainty = 1.0; // probability that it is so; 1 for a plain fact

    friend bool operator==(const Attention&, const Attention&) = default;
};

// One exercise and side of a person.
struct StrengthReview {
    ExerciseId exercise;
    Side side = Side::Both;
    StrengthEstimate strength;
    Trend trend;
};

struct MemberReview {
    Member member;
    std::optional<Day> lastSeen; // last day with a set or a trial, up to asOf
    int daysSeen = 0;            // distinct days with a set, up to asOf
    std::vector<StrengthReview> strength;
    std::vector<SideReview> sides;
    std::vector<Attention> attention; // safety first, then by certainty
};

struct Review {
    Day asOf;
    std::vector<MemberReview> members; // in the order they were added
    int look = 0;                      // entries listed "look" or "act"
    int act = 0;                       // entries listed "act"
    double expectedFalseLook = 0.0;    // of `look`, how many are expected to be chance
    double expectedFalseAct = 0.0;
};

struct ReviewSettings {
    double sideThresholdPercent = 10.0; // 1 to 50: what counts as a difference to act on
};

// Builds a review of the whole roster from histories handed in one at a time, so that only one
// person's sets are in memory. Only data up to and including asOf count. Cost: linear in sets.
class Reviewer {
public:
    // The library must outlive the reviewer.
    Reviewer(const Library& library, Day asOf, ReviewSettings settings = {});
    Reviewer(Reviewer&&) noexcept;
    Reviewer& operator=(Reviewer&&) noexcept;
    ~Reviewer();

    void add(const MemberHistory& history);

    // Noise, priors and lists are taken over everyone added. Call once.
    [[nodiscard]] Review finish();

private:
    struct Working;
    std::unique_ptr<Working> m_working;
};

[[nodiscard]] std::string_view attentionWord(AttentionKind kind); // "pain", "no_gain", ...

// English template with %1, %2, ... of an attention's sentence, and the finished sentence.
[[nodiscard]] std::string_view attentionTemplate(const Attention& attention);
[[nodiscard]] std::string sentence(const Attention& attention);

} // namespace levelbar
