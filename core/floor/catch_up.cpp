// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/catch_up.h"

namespace levelbar {

std::vector<std::size_t> dueBy(const ClassFloor& floor, int minute)
{
    std::vector<std::size_t> due;
    for (std::size_t i = 0; i < floor.cells.size(); ++i) {
        const auto round = static_cast<std::size_t>(floor.cells[i].round) - 1;
        if (floor.cells[i].isOpen() && round < floor.roundEnds.size() &&
            floor.roundEnds[round] <= minute) {
            due.push_back(i);
        }
    }
    return due;
}

void countCell(ClosingCount& count, std::optional<HowKnown> known, bool isOpen)
{
    if (!known) {
        ++(isOpen ? count.unknown : count.setAside);
    } else if (*known == HowKnown::Accepted) {
        ++count.accepted;
    } else if (*known == HowKnown::Group) {
        ++count.group;
    } else {
        ++count.counted;
    }
}

ClosingCount countClosing(const ClassFloor& floor)
{
    ClosingCount count;
    for (const PadCell& cell : floor.cells) {
        countCell(count,
                  cell.done ? std::optional(cell.done->performed.known) : std::nullopt,
                  cell.isOpen());
    }
    return count;
}

Phrase closingPhrase(const ClosingCount& count)
{
    return {"%1 sets: %2 seen, %3 accepted, %4 not asked for, %5 not known.",
            {std::to_string(count.all()),
             std::to_string(count.counted),
             std::to_string(count.accepted + count.group),
             std::to_string(count.setAside),
             std::to_string(count.unknown)}};
}

} // namespace levelbar
