// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exercise/done_set.h"

#include "core/base/number.h"
#include "core/base/words.h"

namespace levelbar {

namespace {

constexpr int kMostReps = 200;
constexpr std::int64_t kMostReserve = 50;

constexpr Words<HowKnown, 4> kKnown = {{{HowKnown::Counted, "counted"},
                                        {HowKnown::Accepted, "accepted"},
                                        {HowKnown::Group, "group"},
                                        {HowKnown::Sheet, "sheet"}}};
constexpr Words<SetKind, 4> kKinds = {{{SetKind::Ramp, "ramp"},
                                       {SetKind::Work, "work"},
                                       {SetKind::Open, "open"},
                                       {SetKind::Test, "test"}}};
constexpr Words<StopReason, 6> kReasons = {{{StopReason::Planned, "planned"},
                                            {StopReason::Capped, "capped"},
                                            {StopReason::NoMore, "no more"},
                                            {StopReason::Form, "form"},
                                            {StopReason::Pain, "pain"},
                                            {StopReason::Time, "time"}}};

} // namespace

std::string_view howKnownWord(HowKnown known)
{
    return wordOf(kKnown, known);
}

std::string_view setKindWord(SetKind kind)
{
    return wordOf(kKinds, kind);
}

std::string_view stopReasonWord(StopReason reason)
{
    return wordOf(kReasons, reason);
}

Result<HowKnown> parseHowKnown(std::string_view text)
{
    return parseWord(kKnown, text);
}

Result<SetKind> parseSetKind(std::string_view text)
{
    return parseWord(kKinds, text);
}

Result<StopReason> parseStopReason(std::string_view text)
{
    return parseWord(kReasons, text);
}

Result<Reserve> parseReserve(std::string_view text)
{
    return parseDecimal(text, 1, 0, kMostReserve * 10).map([](std::int64_t tenths) {
        return Reserve{static_cast<int>(tenths)};
    });
}

std::string text(Reserve reserve)
{
    return decimalText(reserve.tenths, 1);
}

Result<CellEntry> parseCell(std::string_view text)
{
    CellEntry entry;
    if (text.empty()) {
        entry.asPlanned = true;
        return entry;
    }
    const std::size_t mark = text.find_first_of(".,");
    const auto reps = parseWhole(text.substr(0, mark), 0, kMostReps);
    if (!reps) {
        return refuse(FaultCode::NotACell, {excerpt(text)});
    }
    entry.reps = static_cast<int>(*reps);
    if (mark != std::string_view::npos) {
        const auto reserve = parseWhole(text.substr(mark + 1), 0, kMostReserve);
        if (!reserve) {
            return refuse(FaultCode::NotACell, {excerpt(text)});
        }
        entry.reserve = Reserve{static_cast<int>(*reserve) * 10};
    }
    return entry;
}

} // namespace levelbar
