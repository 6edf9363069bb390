// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/typed_set.h"

#include "core/base/number.h"

#include <QRegularExpression>

namespace levelbar::ui {

namespace {

constexpr int kWorstPain = 10;
constexpr std::int64_t kMostSecondsTenths = 36'000; // an hour
constexpr std::int64_t kMostMetresTenths = 100'000; // ten kilometres

Result<KeyedSet> parseAmount(const QString& text, const TypedMeaning& meaning)
{
    if (meaning.kind != AmountKind::Reps) {
        QString number = text.trimmed();
        number.replace(QLatin1Char(','), QLatin1Char('.'));
        const std::int64_t most =
            meaning.kind == AmountKind::Seconds ? kMostSecondsTenths : kMostMetresTenths;
        return parseDecimal(number.toStdString(), 1, 0, most).map([&](std::int64_t tenths) {
            KeyedSet keyed = keyedAmount(meaning.kind, static_cast<int>(tenths));
            keyed.known = meaning.known;
            return keyed;
        });
    }
    return parseCell(text.trimmed().toStdString(), meaning.effort).map([&](const CellEntry& entry) {
        KeyedSet keyed = keyedAmount(meaning.kind, entry.reps);
        keyed.reserve = entry.reserve;
        keyed.known = meaning.known;
        return keyed;
    });
}

} // namespace

KeyedSet keyedAmount(AmountKind kind, int amount)
{
    KeyedSet keyed;
    switch (kind) {
    case AmountKind::Reps:
        keyed.reps = amount;
        break;
    case AmountKind::Seconds:
        keyed.secondsTenths = amount;
        break;
    case AmountKind::Metres:
        keyed.metresTenths = amount;
        break;
    }
    return keyed;
}

Result<KeyedSet> parseTypedSet(const QString& text, const TypedMeaning& meaning)
{
    static const QRegularExpression kPain(QStringLiteral("^(.+)[pP/](\\d{0,2})$"));
    const QRegularExpressionMatch match = kPain.match(text.trimmed());
    if (!match.hasMatch()) {
        return parseAmount(text, meaning);
    }
    std::optional<int> score;
    if (!match.captured(2).isEmpty()) {
        const auto parsed = parseWhole(match.captured(2).toStdString(), 0, kWorstPain);
        if (!parsed) {
            return tl::unexpected(parsed.error());
        }
        score = static_cast<int>(*parsed);
    }
    return parseAmount(match.captured(1), meaning).map([&](KeyedSet keyed) {
        keyed.stopped = StopReason::Pain;
        keyed.pain = score;
        return keyed;
    });
}

KeyedSet withSides(const FloorCell& cell, KeyedSet keyed)
{
    const CellSides& sides = cell.sides;
    if (cell.done) {
        keyed.kind = cell.done->performed.kind;
        keyed.pain = keyed.pain ? keyed.pain : cell.done->performed.pain;
        // Other reps do not change why it ended, but for what is decided anew here.
        const auto before = cell.done->performed.stopped;
        if (!keyed.stopped && before != StopReason::Capped && before != StopReason::Pain) {
            keyed.stopped = before;
        }
    } else if (sides.isOpenPair) {
        keyed.kind = SetKind::Open;
    }
    keyed.prescription = sides.prescription;
    // With nothing left the set ended by itself, not at the limit.
    const bool isAtLimit =
        sides.stopAt && keyed.reps == sides.stopAt && keyed.reserve != Reserve{0};
    if (isAtLimit && !keyed.stopped) {
        keyed.stopped = StopReason::Capped;
    }
    return keyed;
}

} // namespace levelbar::ui
