// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/testing/trial.h"
#include "storage/action.h"

#include <optional>
#include <vector>

namespace levelbar::storage {

// Trials of tests.
class TrialStore {
public:
    explicit TrialStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    [[nodiscard]] std::optional<Trial>
    find(MemberId member, TestId test, Side side, Day day, int number) const;
    [[nodiscard]] std::vector<Trial> ofMember(MemberId member) const; // newest day first

    static void add(WriteScope& scope, const Trial& trial);    // Constraint when the key is taken
    static void update(WriteScope& scope, const Trial& trial); // Constraint when there is none

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
