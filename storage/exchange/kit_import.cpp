// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/exchange/kit_import.h"

#include "core/base/number.h"
#include "core/base/utf8.h"
#include "core/member/member.h"
#include "storage/exchange/import_rows.h"

#include <array>

namespace levelbar::storage {

namespace {

constexpr std::array<std::string_view, 5> kKitColumns = {"kind", "mass", "unit", "count", "name"};
constexpr std::array<std::string_view, 2> kKitNeeded = {"kind", "mass"};
constexpr std::string_view kKinds = "bar, plate, dumbbell, kettlebell, collars, step";
constexpr int kLongestPieceName = 60;
constexpr std::int64_t kUsualStep = 2500; // grams

struct Piece {
    Mass mass;
    int count = 1;
    std::string name;
};

Piece readPiece(ImportFile& file)
{
    Piece piece;
    MassUnit unit = MassUnit::Kilogram;
    file.takeOr("unit", unit, MassUnit::Kilogram, parseMassUnit);
    const std::string_view number = file.numberCell("mass");
    piece.mass =
        file.take("mass", number.empty() ? refuse(FaultCode::Empty) : parseMass(number, unit))
            .value_or(Mass());
    if (!file.cell("count").empty()) {
        const auto count = file.take("count", parseWhole(file.cell("count"), 0, kMostPieces));
        piece.count = static_cast<int>(count.value_or(1));
    }
    piece.name =
        file.take("name", checkText(file.cell("name"), kLongestPieceName)).value_or(std::string());
    return piece;
}

// False when the word is none of the kinds.
bool addPiece(Kit& kit, std::string_view kind, Piece piece)
{
    if (kind == "bar") {
        kit.bars.push_back({std::move(piece.name), piece.mass, piece.count});
    } else if (kind == "plate") {
        kit.plates.push_back({piece.mass, piece.count});
    } else if (kind == "dumbbell") {
        kit.handWeights.push_back({Implement::Dumbbell, piece.mass, piece.count});
    } else if (kind == "kettlebell") {
        kit.handWeights.push_back({Implement::Kettlebell, piece.mass, piece.count});
    } else if (kind == "collars") {
        kit.collars = piece.mass;
    } else if (kind == "step") {
        kit.stackStep = piece.mass;
    } else {
        return false;
    }
    return true;
}

} // namespace

std::optional<Kit> readKit(const ImportSource& source, ImportReport& report)
{
    Kit kit;
    kit.stackStep = Mass::ofThousandths(kUsualStep, MassUnit::Kilogram);
    ImportFile file(source, report);
    file.read(kKitColumns, kKitNeeded, [&] {
        Piece piece = readPiece(file);
        const std::string kind(file.cell("kind"));
        if (!addPiece(kit, kind, std::move(piece))) {
            file.refuse("kind", {FaultCode::NotOneOf, {excerpt(kind), std::string(kKinds)}});
        }
    });
    if (file.faults() > 0) {
        return std::nullopt;
    }
    auto checked = checkKit(std::move(kit));
    if (!checked) {
        report.faults.push_back({source.name, 0, {}, checked.error()});
        return std::nullopt;
    }
    return std::move(*checked);
}

} // namespace levelbar::storage
