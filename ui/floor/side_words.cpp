// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/side_words.h"

#include "core/sides/side_prescription.h"
#include "ui/floor/floor_words.h"

#include <QCoreApplication>
#include <QLocale>

namespace levelbar::ui {

namespace {

struct SideWords {
    Q_DECLARE_TR_FUNCTIONS(SideWords)
};

QString number(int value)
{
    return QLocale().toString(value);
}

} // namespace

QString notAskedText(NotAsked reason)
{
    switch (reason) {
    case NotAsked::EasyDay:
        return SideWords::tr("easy day");
    case NotAsked::NotYetHere:
        return SideWords::tr("came late");
    case NotAsked::NoMaximum:
        return SideWords::tr("no maximum");
    case NotAsked::ShorterWarmUp:
        return SideWords::tr("short warm-up");
    case NotAsked::Left:
        return SideWords::tr("has left");
    case NotAsked::Pain:
        return SideWords::tr("left out: pain");
    case NotAsked::NoKit:
        return SideWords::tr("kit gone");
    }
    return {};
}

QString openCellText(const FloorCell& cell, const Exercise* exercise)
{
    const CellSides& sides = cell.sides;
    if (sides.isOver) {
        return SideWords::tr("over: pain");
    }
    if (sides.notToday) {
        return *sides.notToday == SideRule::SentOn ? SideWords::tr("not today: sent on")
                                                   : SideWords::tr("not today: it hurt");
    }
    if (cell.notAsked) {
        return notAskedText(*cell.notAsked);
    }
    if (cell.waits) {
        return SideWords::tr("waits: pain");
    }
    if (sides.isOpenPair) {
        return sides.isFirst ? SideWords::tr("first: to one in reserve")
                             : SideWords::tr("to one in reserve");
    }
    if (sides.stopAt) {
        return SideWords::tr("stop at %1").arg(number(*sides.stopAt));
    }
    const QString plan = plannedText(*cell.planned, exercise);
    if (sides.isUncapped) {
        return SideWords::tr("no limit: %1").arg(plan);
    }
    if (sides.isExtra) {
        return SideWords::tr("one more: %1").arg(plan);
    }
    return sides.isFirst ? SideWords::tr("first: %1").arg(plan) : plan;
}

QString sidesText(const FloorCell& cell, Side side)
{
    const CellSides& sides = cell.sides;
    if (!sides.first) {
        return {};
    }
    if (sides.isOver) {
        return SideWords::tr("pain ended it for both sides");
    }
    if (sides.notToday) {
        return *sides.notToday == SideRule::SentOn
                   ? SideWords::tr("sent on: not ours to train")
                   : SideWords::tr("it hurt last time: neither side");
    }
    const QString first = sideText(*sides.first);
    if (sides.isOpenPair) {
        return SideWords::tr("open pair, %1 first: to one in reserve, both sides; 2 to 3 minutes "
                             "between; type reps and reserve (9.1)")
            .arg(first);
    }
    if (sides.stopAt) {
        const QString limit = number(*sides.stopAt);
        return sides.isLessOne
                   ? SideWords::tr("stop at %1: the last rep of the %2 was not clean")
                         .arg(limit, first)
                   : SideWords::tr("stop at %1, as many as the %2 did").arg(limit, first);
    }
    if (sides.isUncapped) {
        return SideWords::tr("no limit in this set: the %1 goes on to one to three in reserve; "
                             "type reps and reserve (11.2)")
            .arg(sideText(side));
    }
    if (sides.isExtra) {
        return SideWords::tr("one set more for the weaker side");
    }
    if (!sides.isCapped) {
        return SideWords::tr("%1 first").arg(first);
    }
    return side == *sides.first
               ? SideWords::tr("%1 first, the weaker side: count it, its reps are the limit of the "
                               "%2")
                     .arg(first, sideText(otherSide(side)))
               : SideWords::tr("%1 first, the weaker side").arg(first);
}

QString storedSidesText(const FloorCell& cell, const DoneSet& set)
{
    const CellSides& sides = cell.sides;
    if (!sides.first) {
        return {};
    }
    const QString other = sideText(otherSide(set.side));
    if (set.performed.stopped == StopReason::Pain) {
        return SideWords::tr("Pain: the exercise is over for both sides today.");
    }
    const int reps = set.performed.reps.value_or(0);
    if (sides.stopAt && reps > *sides.stopAt) {
        return SideWords::tr("It went past the limit: the %1 did %2.")
            .arg(other, number(*sides.stopAt));
    }
    if (sides.stopAt && reps < *sides.stopAt) {
        return SideWords::tr("Other way round today: fewer than the %1's %2.")
            .arg(other, number(*sides.stopAt));
    }
    if (sides.isCapped && sides.isFirst) {
        const SideCap cap = capAfter(set.performed);
        return cap.reps ? SideWords::tr("The %1 stops at %2.").arg(other, number(*cap.reps))
                        : SideWords::tr("Not counted: no limit for the %1.").arg(other);
    }
    return {};
}

} // namespace levelbar::ui
