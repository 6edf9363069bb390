// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/kit.h"

#include <set>

namespace levelbar {

namespace {

std::string typed(const Mass& mass)
{
    return mass.number() + " " + std::string(unitWord(mass.unit()));
}

std::optional<Fault> faultOf(const Mass& mass, int count)
{
    if (mass.thousandths() <= 0) {
        return Fault{FaultCode::OutOfRange, {typed(mass), "0.001", "1000"}};
    }
    if (count < 0 || count > kMostPieces) {
        return Fault{FaultCode::OutOfRange,
                     {std::to_string(count), "0", std::to_string(kMostPieces)}};
    }
    return std::nullopt;
}

// Whether a mass of the same kind of thing stands there already.
class Seen {
public:
    std::optional<Fault> note(const Mass& mass)
    {
        if (!m_weights.insert(exactWeight(mass)).second) {
            return Fault{FaultCode::RepeatedPiece, {typed(mass)}};
        }
        return std::nullopt;
    }

private:
    std::set<std::int64_t> m_weights;
};

std::optional<Fault> faultOfBars(const Kit& kit)
{
    if (kit.bars.empty()) {
        return Fault{FaultCode::NoBar, {}};
    }
    for (const BarKind& bar : kit.bars) {
        if (const auto fault = faultOf(bar.mass, bar.count)) {
            return fault;
        }
    }
    return std::nullopt;
}

std::optional<Fault> faultOfPlates(const Kit& kit)
{
    if (kit.plates.size() > kMostKindsOfPlates) {
        return Fault{FaultCode::OutOfRange,
                     {std::to_string(kit.plates.size()), "0", std::to_string(kMostKindsOfPlates)}};
    }
    Seen seen;
    for (const PlateKind& plate : kit.plates) {
        if (const auto fault = faultOf(plate.mass, plate.count)) {
            return fault;
        }
        if (const auto fault = seen.note(plate.mass)) {
            return fault;
        }
    }
    return std::nullopt;
}

std::optional<Fault> faultOfHandWeights(const Kit& kit)
{
    Seen dumbbells;
    Seen kettlebells;
    for (const HandWeight& piece : kit.handWeights) {
        if (const auto fault = faultOf(piece.mass, piece.count)) {
            return fault;
        }
        Seen& seen = piece.implement == Implement::Dumbbell ? dumbbells : kettlebells;
        if (const auto fault = seen.note(piece.mass)) {
            return fault;
        }
    }
    return std::nullopt;
}

} // namespace

Kit assumedKit(MassUnit unit)
{
    const bool isPound = unit == MassUnit::Pound;
    const auto typed = [unit](std::int64_t thousandths) {
        return Mass::ofThousandths(thousandths, unit);
    };
    Kit kit;
    kit.isAssumed = true;
    kit.bars = {{"Bar", typed(isPound ? 45'000 : 20'000), kMostPieces}};
    const std::vector<std::int64_t> plates =
        isPound ? std::vector<std::int64_t>{45'000, 35'000, 25'000, 10'000, 5'000, 2'500}
                : std::vector<std::int64_t>{25'000, 20'000, 15'000, 10'000, 5'000, 2'500, 1'250};
    for (const std::int64_t plate : plates) {
        kit.plates.push_back({typed(plate), kMostPieces});
    }
    const auto step = [isPound](std::int64_t mass) {
        return isPound ? 5'000 : (mass < 10'000 ? 1'000 : 2'000);
    };
    const std::int64_t heaviest = isPound ? 100'000 : 40'000;
    for (std::int64_t mass = step(0); mass <= heaviest; mass += step(mass)) {
        kit.handWeights.push_back({Implement::Dumbbell, typed(mass), kMostPieces});
    }
    const std::int64_t bell = isPound ? 10'000 : 4'000;
    for (std::int64_t mass = bell; mass <= (isPound ? 70'000 : 32'000); mass += bell) {
        kit.handWeights.push_back({Implement::Kettlebell, typed(mass), kMostPieces});
    }
    kit.stackStep = typed(isPound ? 5'000 : 2'500);
    return kit;
}

Result<Kit> checkKit(Kit kit)
{
    for (const auto& fault : {faultOfBars(kit), faultOfPlates(kit), faultOfHandWeights(kit)}) {
        if (fault) {
            return tl::unexpected(*fault);
        }
    }
    if (kit.stackStep.thousandths() <= 0) {
        return refuse(FaultCode::OutOfRange, {typed(kit.stackStep), "0.001", "1000"});
    }
    return kit;
}

} // namespace levelbar
