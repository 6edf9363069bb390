// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/setup_card.h"
#include "core/plan/rack_line_up.h"
#include "storage/action.h"

#include <map>
#include <optional>
#include <span>
#include <utility>
#include <vector>

namespace levelbar::storage {

// How each person's station is set up.
class SetupStore {
public:
    explicit SetupStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    [[nodiscard]] std::optional<SetupCard> find(MemberId member, ExerciseId exercise) const;
    [[nodiscard]] std::vector<SetupCard> ofMember(MemberId member) const; // by exercise
    // What must be set at a rack for these people, by person and exercise.
    [[nodiscard]] std::map<std::pair<MemberId, ExerciseId>, RackSetting>
    settingsOf(std::span<const MemberId> members) const;
    // Confirmed cards of one exercise, but one person's: what a proposal learns from. By member;
    // archived people count.
    [[nodiscard]] std::vector<SetupCard> confirmedBut(ExerciseId exercise, MemberId member) const;

    // Adds a card that checkSetupCard has passed, or replaces the one of the same person and
    // exercise. Constraint for a rack that is not there.
    static void put(WriteScope& scope, const SetupCard& card);
    static void remove(WriteScope& scope, MemberId member, ExerciseId exercise);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
