// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exercise/effort.h"

#include "core/base/number.h"

namespace levelbar {

namespace {

constexpr int kTopTenths = 100; // RPE 10

Result<Reserve> ofRpe(std::int64_t tenths, std::string_view typed)
{
    const std::int64_t reserve = kTopTenths - tenths;
    if (reserve < 0 || reserve > kMostRpeReserve.tenths || reserve % 5 != 0) {
        return refuse(FaultCode::OutOfRange, {excerpt(typed), "5", "10, in halves"});
    }
    return Reserve{static_cast<int>(reserve)};
}

} // namespace

bool isOnScale(Reserve reserve, EffortScale scale)
{
    return scale == EffortScale::Reserve || reserve <= kMostRpeReserve;
}

std::string effortNumber(Reserve reserve, EffortScale scale)
{
    return decimalText(scale == EffortScale::Rpe ? kTopTenths - reserve.tenths : reserve.tenths, 1);
}

Result<Reserve> parseEffort(std::string_view text, EffortScale scale)
{
    if (scale == EffortScale::Reserve) {
        return parseReserve(text);
    }
    const auto tenths = parseDecimal(text, 1, 0, kTopTenths);
    return tenths ? ofRpe(*tenths, text) : ofRpe(-1, text);
}

Result<CellEntry> parseCell(std::string_view text, EffortScale scale)
{
    const std::size_t mark = text.find_first_of(".,");
    if (scale == EffortScale::Reserve || mark == std::string_view::npos) {
        return parseCell(text);
    }
    const auto faulty = [text] { return refuse(FaultCode::NotARpeCell, {excerpt(text)}); };
    auto entry = parseCell(text.substr(0, mark));
    const auto typed = parseWhole(text.substr(mark + 1), 0, 99);
    if (!entry || entry->asPlanned || !typed) {
        return faulty();
    }
    const auto reserve = ofRpe(*typed > 10 ? *typed : 10 * *typed, text);
    if (!reserve) {
        return faulty();
    }
    entry->reserve = *reserve;
    return entry;
}

} // namespace levelbar
