// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/floor_order.h"

#include <algorithm>
#include <functional>
#include <tuple>

namespace levelbar {

namespace {

std::size_t placeOf(const ClassFloor& floor, int number)
{
    const auto found = std::find_if(floor.stations.begin(),
                                    floor.stations.end(),
                                    [number](const Station& one) { return one.number == number; });
    return static_cast<std::size_t>(found - floor.stations.begin());
}

using Wanted = std::function<bool(const PadCell&)>;

// Rounds from the one of the keys on, earlier ones last.
int roundRank(const ClassFloor& floor, int round)
{
    constexpr int kFar = 1'000'000;
    return round >= floor.round ? round - floor.round : round + kFar;
}

std::optional<std::size_t> firstOpen(const ClassFloor& floor, const Wanted& isWanted)
{
    // Where the walk goes on: behind the cursor, in a circle over the stations of a round.
    std::tuple<std::size_t, std::size_t> from{0, 0};
    if (floor.cursor && floor.cells[*floor.cursor].round == floor.round) {
        from = {placeOf(floor, floor.cells[*floor.cursor].station), *floor.cursor};
    }
    const auto rank = [&floor, &from](std::size_t index) {
        const PadCell& cell = floor.cells[index];
        const std::size_t place = placeOf(floor, cell.station);
        const bool isInRound = cell.round == floor.round;
        // In the keys' own round: rest of this station, later stations, earlier ones, and last
        // what was passed over at this one.
        const auto [station, cursor] = from;
        const std::size_t count = floor.stations.size() + 1;
        std::size_t step = place;
        if (isInRound) {
            step = (place + count - station) % count;
            step = step == 0 && index < cursor ? count : step;
        }
        return std::tuple(cell.isHeld, roundRank(floor, cell.round), step, index);
    };
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < floor.cells.size(); ++i) {
        if (floor.cells[i].isOpen() && isWanted(floor.cells[i]) &&
            (!best || rank(i) < rank(*best))) {
            best = i;
        }
    }
    return best;
}

} // namespace

void sortCells(ClassFloor& floor)
{
    const auto key = [&floor](const PadCell& cell) {
        return std::tuple(cell.round,
                          placeOf(floor, cell.station),
                          cell.turn,
                          cell.planned.member,
                          cell.planned.exercise,
                          cell.planned.number,
                          cell.planned.side);
    };
    std::optional<PadCell> under;
    if (floor.cursor) {
        under = floor.cells[*floor.cursor];
    }
    std::stable_sort(floor.cells.begin(),
                     floor.cells.end(),
                     [&key](const PadCell& a, const PadCell& b) { return key(a) < key(b); });
    if (under) {
        const auto found = std::find(floor.cells.begin(), floor.cells.end(), *under);
        floor.cursor = static_cast<std::size_t>(found - floor.cells.begin());
    }
}

std::optional<std::size_t> openCell(const ClassFloor& floor)
{
    return firstOpen(floor, [](const PadCell&) { return true; });
}

std::optional<std::size_t> openCellOf(const ClassFloor& floor, MemberId member)
{
    return firstOpen(floor,
                     [member](const PadCell& cell) { return cell.planned.member == member; });
}

std::optional<std::size_t> openCellAt(const ClassFloor& floor, int number)
{
    return firstOpen(floor, [number](const PadCell& cell) { return cell.station == number; });
}

void moveCursor(ClassFloor& floor, std::optional<std::size_t> cell)
{
    floor.cursor = cell;
    floor.round = cell ? floor.cells[*cell].round : floor.round;
}

void moveOn(ClassFloor& floor)
{
    if (!floor.cursor || !floor.cells[*floor.cursor].isOpen()) {
        moveCursor(floor, openCell(floor));
    }
}

} // namespace levelbar
