// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/ladder.h"
#include "storage/action.h"

#include <string_view>
#include <vector>

namespace levelbar::storage {

// Ladders: the shipped ones, the gym's versions of them in their place, and its own.
class LadderStore {
public:
    explicit LadderStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    // By pattern, then by when they were added; rungs from easy to hard.
    [[nodiscard]] std::vector<Ladder> all() const;

    // Writes a ladder that checkLadder has passed as the gym's own; one of a shipped ladder's key
    // takes its place and survives library updates.
    static void put(WriteScope& scope, Ladder ladder);

    // Removes the gym's own ladder of this key; where there is a shipped one, it is back.
    static void removeOwn(WriteScope& scope, std::string_view key);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
