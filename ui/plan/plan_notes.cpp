// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/plan/plan_notes.h"

#include "ui/words.h"

#include <QCoreApplication>

namespace levelbar::ui {

namespace {

QString noteText(const char* text)
{
    return QCoreApplication::translate("PlanNotes", text);
}

QString nameIn(const ClassPlan& plan, MemberId member)
{
    for (const MemberHistory& person : plan.people) {
        if (person.member.id == member) {
            return personName(person.member);
        }
    }
    return noteText("somebody");
}

QString savingText(const BlockSaving& saving)
{
    const int minutes = qRound(saving.minutes);
    switch (saving.cut) {
    case BlockCut::ShorterRest:
        return noteText("rest of %1 s: %2 min").arg(saving.value).arg(minutes);
    case BlockCut::SameHooks:
        return noteText("one hook hole a rack: %1 min").arg(minutes);
    case BlockCut::FewerRounds:
        return noteText("%1 sets: %2 min").arg(saving.value).arg(minutes);
    case BlockCut::FewerPeople:
        return noteText("%1 people at the slowest rack: %2 min").arg(saving.value).arg(minutes);
    }
    return {};
}

QString blockNote(const BlockPlan& block)
{
    const int minutes = qRound(block.minutes.minutes);
    QString line = noteText("Block %1: about %2 of %3 minutes.")
                       .arg(block.block.number)
                       .arg(minutes)
                       .arg(block.block.minutes);
    if (!block.minutes.fits) {
        QStringList ways;
        for (const BlockSaving& saving : block.minutes.savings) {
            ways << savingText(saving);
        }
        line += QLatin1Char(' ') +
                (ways.isEmpty()
                     ? noteText("Too long: drop sets.")
                     : noteText("Too long. What helps: %1.").arg(ways.join(QStringLiteral("; "))));
    }
    if (block.noSharing) {
        line += QLatin1Char(' ') + words(*block.noSharing) + QLatin1Char('.');
    }
    return line;
}

QString clashNote(const ClassPlan& plan, const MeetingPlanAnswer& answer, const KitClash& clash)
{
    QString line = words(clashPhrase(clash));
    const auto fixes = fixesFor(clash, answer.wants, answer.book);
    if (fixes.empty()) {
        return line;
    }
    const KitChange& fix = fixes.front();
    const QString name = nameIn(plan, answer.wants[fix.want].member);
    const QString load = plain(fix.load.number() + " " + std::string(unitWord(fix.load.unit())));
    const bool isOrder = fix.fix == KitFix::OtherOrder || fix.fix == KitFix::OtherRound;
    return line + QLatin1Char(' ') +
           (isOrder ? noteText("Way out: %1 does it in round %2.").arg(name).arg(fix.round)
                    : noteText("Way out: %1 takes %2.").arg(name, load));
}

QString movesNote(const RackSharing& sharing)
{
    QString line = QLatin1Char('\n') + noteText("A round moves %1 plates and %2 hooks or safeties")
                                           .arg(sharing.plateMoves)
                                           .arg(sharing.hookMoves);
    if (sharing.benchMoves > 0) {
        line += noteText(", sets %1 benches anew").arg(sharing.benchMoves);
    }
    if (sharing.rampMoves > 0) {
        line += noteText("; the warm-up moves %1 plates").arg(sharing.rampMoves);
    }
    return line + noteText("; no sharing has fewer than %1 moves in all.").arg(sharing.lowerBound);
}

// What no sharing over so many racks could keep to.
QString brokenNote(const BrokenRules& broken)
{
    QString line;
    const auto add = [&line](const char* text, int count) {
        if (count > 0) {
            line += QLatin1Char('\n') + noteText(text).arg(count);
        }
    };
    add("Pairs at one rack that you want apart: %1. Use one rack more, or move one of them.",
        broken.together);
    add("Racks with nobody who can spot: %1. Stand there yourself, or keep it light.",
        broken.racksWithoutSpot);
    add("Plates that may be short when all racks are at their heaviest: %1. Swap turns or share.",
        broken.platesShort);
    return line;
}

QString rackNote(const ClassPlan& plan, const BlockPlan& block, const RackRound& round)
{
    QString line = exerciseName(plan.library, round.exercise);
    if (block.block.halves == 2) {
        line += noteText(", half %1").arg(round.half);
    }
    int rack = 0;
    for (const RackPlace& place : round.places) {
        if (place.rack != rack) {
            rack = place.rack;
            line += QLatin1Char('\n') + noteText("Rack %1: ").arg(rack);
        } else {
            line += QStringLiteral(", ");
        }
        line += nameIn(plan, place.member);
    }
    return line + movesNote(round.sharing) + brokenNote(round.broken);
}

} // namespace

QStringList planNotes(const ClassPlan& plan, const MeetingPlanAnswer& answer)
{
    QStringList notes;
    if (answer.blocks.empty()) {
        notes << noteText("The class has no exercises yet: add them to the template.");
    }
    for (const KitClash& clash : answer.clashes) {
        notes << clashNote(plan, answer, clash);
    }
    for (const BlockPlan& block : answer.blocks) {
        notes << blockNote(block);
    }
    for (const BlockPlan& block : answer.blocks) {
        for (const RackRound& round : block.rounds) {
            notes << rackNote(plan, block, round);
        }
    }
    return notes;
}

} // namespace levelbar::ui
