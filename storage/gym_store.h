// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/effort.h"
#include "core/gym/kit.h"
#include "storage/action.h"

namespace levelbar::storage {

// What this gym owns and how it likes things shown.
class GymStore {
public:
    explicit GymStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    // assumedKit() while nobody has said what the gym owns.
    [[nodiscard]] Kit kit() const;
    // The same, less what is gone on the day: what a target for that day can be made of.
    [[nodiscard]] Kit kitOn(Day day) const;
    [[nodiscard]] EffortScale effortScale() const; // Reserve until chosen

    // Replaces the whole kit, which checkKit must have passed. An assumed kit clears it.
    static void setKit(WriteScope& scope, const Kit& kit);
    static void setEffortScale(WriteScope& scope, EffortScale scale);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
