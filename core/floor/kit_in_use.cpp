// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/kit_in_use.h"

#include <algorithm>
#include <map>

namespace levelbar {

namespace {

void add(std::vector<Piece>& pieces, Implement implement, const Mass& mass, int count)
{
    const std::int64_t exact = exactWeight(mass);
    const auto known = std::find_if(pieces.begin(), pieces.end(), [&](const Piece& piece) {
        return piece.implement == implement && piece.exact == exact;
    });
    if (known == pieces.end()) {
        pieces.push_back({implement, exact, mass, count});
    } else {
        known->count += count;
    }
}

int countOf(const std::vector<Piece>& pieces, const Piece& kind)
{
    for (const Piece& piece : pieces) {
        if (piece.implement == kind.implement && piece.exact == kind.exact) {
            return piece.count;
        }
    }
    return 0;
}

std::vector<Piece> platesFor(const FloorExercise& floorExercise, const Mass& load)
{
    const auto found = floorExercise.loads ? floorExercise.loads->exactly(load) : std::nullopt;
    std::vector<Piece> pieces;
    if (found) {
        for (const Mass& plate : found->eachSide) {
            add(pieces, Implement::Barbell, plate, 2);
        }
    }
    return pieces;
}

std::vector<Piece> handWeightsFor(const Exercise& exercise, const Mass& load)
{
    std::vector<Piece> pieces;
    if (load.thousandths() > 0) {
        const bool isPair =
            exercise.implement == Implement::Dumbbell && exercise.sidedness == Sidedness::TwoSided;
        add(pieces, exercise.implement, load, isPair ? 2 : 1);
    }
    return pieces;
}

} // namespace

std::vector<Piece> piecesFor(const FloorExercise& floorExercise, const Mass& load)
{
    switch (floorExercise.exercise.implement) {
    case Implement::Barbell:
        return platesFor(floorExercise, load);
    case Implement::Dumbbell:
    case Implement::Kettlebell:
        return handWeightsFor(floorExercise.exercise, load);
    default:
        return {};
    }
}

int owned(const Kit& kit, const Piece& kind)
{
    if (kit.isAssumed) {
        return kMostPieces;
    }
    if (kind.implement == Implement::Barbell) {
        for (const PlateKind& plate : kit.plates) {
            if (exactWeight(plate.mass) == kind.exact) {
                return plate.count;
            }
        }
        return 0;
    }
    for (const HandWeight& piece : kit.handWeights) {
        if (piece.implement == kind.implement && exactWeight(piece.mass) == kind.exact) {
            return piece.count;
        }
    }
    return 0;
}

bool isFree(const ClassFloor& floor, const FloorBook& book, std::size_t index, const Mass& load)
{
    const PadCell& cell = floor.cells[index];
    const FloorExercise* exercise = book.find(cell.planned.exercise);
    if (exercise == nullptr) {
        return true;
    }
    const auto wanted = piecesFor(*exercise, load);
    std::vector<std::map<int, int>> atStations(wanted.size());
    for (std::size_t i = 0; i < floor.cells.size() && !wanted.empty(); ++i) {
        const PadCell& other = floor.cells[i];
        const FloorExercise* theirs = book.find(other.planned.exercise);
        if (other.round != cell.round || other.station == cell.station || other.setAside ||
            theirs == nullptr) {
            continue;
        }
        const auto pieces = piecesFor(*theirs, other.planned.load);
        for (std::size_t w = 0; w < wanted.size(); ++w) {
            int& most = atStations[w][other.station];
            most = std::max(most, countOf(pieces, wanted[w]));
        }
    }
    for (std::size_t w = 0; w < wanted.size(); ++w) {
        int inUse = wanted[w].count;
        for (const auto& [station, most] : atStations[w]) {
            inUse += most;
        }
        if (inUse > owned(book.kit, wanted[w]) - countOf(floor.missing, wanted[w])) {
            return false;
        }
    }
    return true;
}

std::optional<Mass>
nextFreeLoad(const ClassFloor& floor, const FloorBook& book, std::size_t index, int direction)
{
    const PadCell& cell = floor.cells[index];
    const FloorExercise* exercise = book.find(cell.planned.exercise);
    if (exercise == nullptr || !exercise->loads) {
        return std::nullopt;
    }
    const AvailableLoads& loads = *exercise->loads;
    auto next = direction > 0 ? loads.above(cell.planned.load) : loads.below(cell.planned.load);
    while (next && !isFree(floor, book, index, next->load)) {
        next = direction > 0 ? loads.above(next->load) : loads.below(next->load);
    }
    return next ? std::optional(next->load) : std::nullopt;
}

} // namespace levelbar
