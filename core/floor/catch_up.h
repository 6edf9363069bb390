// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/class_floor.h"
#include "core/review/wording.h"

#include <optional>
#include <vector>

namespace levelbar {

// Open cells of rounds that should be over by a minute of the hour, in their order. They are not
// known, and nobody missed them.
[[nodiscard]] std::vector<std::size_t> dueBy(const ClassFloor& floor, int minute);

// How the sets of the hour are known at its end.
struct ClosingCount {
    int counted = 0;  // seen
    int accepted = 0; // by a key of their own
    int group = 0;    // with a round
    int unknown = 0;  // still open
    int setAside = 0; // not asked for, so not missed

    friend bool operator==(const ClosingCount&, const ClosingCount&) = default;

    [[nodiscard]] int all() const { return counted + accepted + group + unknown + setAside; }
};

// Adds a set that is known so, or else open or set aside.
void countCell(ClosingCount& count, std::optional<HowKnown> known, bool isOpen);
[[nodiscard]] ClosingCount countClosing(const ClassFloor& floor);

// "205 sets: 46 seen, 120 accepted, 6 not asked for, 33 not known."
[[nodiscard]] Phrase closingPhrase(const ClosingCount& count);

} // namespace levelbar
