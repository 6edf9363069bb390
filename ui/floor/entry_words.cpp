// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/entry_words.h"

#include "ui/floor/floor_words.h"

#include <QCoreApplication>

namespace levelbar::ui {

namespace {

struct EntryWords {
    Q_DECLARE_TR_FUNCTIONS(EntryWords)
};

QString placeOf(const FloorModel& model, const DoneSet& set)
{
    int number = set.performed.number;
    for (const FloorRow& row : model.sheet().rows) {
        for (const FloorCell& cell : row.cells) {
            if (cell.planned && set.planned == cell.planned->id) {
                number = cell.planned->number; // the number that people see in the grid
            }
        }
    }
    return placeText(model.reference(), {set.exercise, number, set.side});
}

} // namespace

QString describeSet(const FloorModel& model, const DoneSet& set)
{
    return EntryWords::tr("%1, %2: %3 (%4)")
        .arg(personName(model.reference(), set.member),
             placeOf(model, set),
             doneText(
                 set, model.reference().library.exercise(set.exercise), model.reference().effort),
             knownText(set.performed.known));
}

QString describeTakenBack(const FloorModel& model, const TakenBack& taken)
{
    if (taken.undone && taken.restored) {
        return EntryWords::tr("Taken back: a correction. Again %1")
            .arg(describeSet(model, *taken.restored));
    }
    if (taken.undone) {
        return EntryWords::tr("Taken back: %1").arg(describeSet(model, *taken.undone));
    }
    const QString who =
        taken.members.size() == 1
            ? personName(model.reference(), taken.members.front())
            : EntryWords::tr("%n people", nullptr, static_cast<int>(taken.members.size()));
    switch (taken.kind) {
    case storage::ActionKind::OpenMeeting:
        return EntryWords::tr("Taken back: %1 came, the first of this class.").arg(who);
    case storage::ActionKind::MarkAttendance:
        return EntryWords::tr("Taken back: who came (%1).").arg(who);
    case storage::ActionKind::PlanMeeting:
        return EntryWords::tr("Taken back: a planned load (%1).").arg(who);
    case storage::ActionKind::EditTemplate:
        return EntryWords::tr("Taken back: a change to the class.");
    case storage::ActionKind::AddMember:
        return EntryWords::tr("Taken back: a new person.");
    case storage::ActionKind::EditMember:
        return EntryWords::tr("Taken back: a change to %1.").arg(who);
    case storage::ActionKind::EditGym:
        return EntryWords::tr("Taken back: a change to what the gym owns.");
    case storage::ActionKind::EditClass:
        return EntryWords::tr("Taken back: a new class.");
    default:
        return EntryWords::tr("Taken back: the last entry.");
    }
}

} // namespace levelbar::ui
