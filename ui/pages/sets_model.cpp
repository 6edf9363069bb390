// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/sets_model.h"

#include "core/base/number.h"
#include "ui/words.h"

#include <QDate>
#include <QLocale>

namespace levelbar::ui {

namespace {

QString amountText(const PerformedSet& set)
{
    if (set.reps) {
        return QLocale().toString(*set.reps);
    }
    if (set.secondsTenths) {
        return SetsModel::tr("%1 s").arg(plain(decimalText(*set.secondsTenths, 1)));
    }
    return set.metresTenths ? SetsModel::tr("%1 m").arg(plain(decimalText(*set.metresTenths, 1)))
                            : QString();
}

// On the scale that the gym chose; a reserve beyond the RPE scale's end is told as a reserve.
QString effortText(const std::optional<Reserve>& reserve, EffortScale effort)
{
    if (!reserve) {
        return {};
    }
    return isOnScale(*reserve, effort) ? plain(effortNumber(*reserve, effort))
                                       : SetsModel::tr("%1 left").arg(plain(text(*reserve)));
}

QString painText(const DoneSet& set)
{
    if (!set.performed.pain) {
        return {};
    }
    QString text = QLocale().toString(*set.performed.pain);
    if (!set.painArea.empty()) {
        text += QLatin1Char(' ') + plain(set.painArea);
    }
    if (set.painSide && *set.painSide != Side::Both) {
        text += QLatin1Char(' ') + word(sideWord(*set.painSide));
    }
    return text;
}

} // namespace

void SetsModel::show(std::vector<DoneSet> sets, Library library, EffortScale effort)
{
    beginResetModel();
    m_sets = std::move(sets);
    m_library = std::move(library);
    m_effort = effort;
    endResetModel();
}

int SetsModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_sets.size());
}

int SetsModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant SetsModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole || section >= ColumnCount) {
        return {};
    }
    const QStringList titles = {tr("Day"),
                                tr("Exercise"),
                                tr("Side"),
                                tr("Set"),
                                tr("Load"),
                                tr("Reps"),
                                m_effort == EffortScale::Rpe ? tr("RPE") : tr("Reserve"),
                                tr("How known"),
                                tr("Kind"),
                                tr("Stopped"),
                                tr("Pain"),
                                tr("Note")};
    return titles.at(section);
}

QString SetsModel::text(const DoneSet& set, int column) const
{
    const PerformedSet& performed = set.performed;
    switch (column) {
    case DayColumn: {
        const CivilDate date = civilDate(performed.day);
        return QLocale().toString(QDate(date.year, date.month, date.day),
                                  QStringLiteral("ddd d MMM yyyy"));
    }
    case ExerciseColumn: {
        const Exercise* exercise = m_library.exercise(set.exercise);
        return exercise == nullptr ? QString() : plain(exercise->name);
    }
    case SideColumn:
        return set.side == Side::Both ? QString() : word(sideWord(set.side));
    case NumberColumn:
        return QLocale().toString(performed.number);
    case LoadColumn:
        return performed.load.thousandths() == 0
                   ? QString()
                   : plain(performed.load.number() + " " +
                           std::string(unitWord(performed.load.unit())));
    case AmountColumn:
        return amountText(performed);
    case ReserveColumn:
        return effortText(performed.reserve, m_effort);
    case KnownColumn:
        return word(howKnownWord(performed.known));
    case KindColumn:
        return word(setKindWord(performed.kind));
    case StoppedColumn:
        return performed.stopped ? word(stopReasonWord(*performed.stopped)) : QString();
    case PainColumn:
        return painText(set);
    case NoteColumn:
        return plain(set.note) +
               (performed.isClean == false ? QStringLiteral(" ") + tr("(not clean)") : QString());
    default:
        return {};
    }
}

QVariant SetsModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid() || index.row() >= rowCount()) {
        return {};
    }
    const DoneSet& set = m_sets[static_cast<std::size_t>(index.row())];
    if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole) {
        return text(set, index.column());
    }
    if (role == SearchRole) {
        QString all;
        for (int column = 0; column < ColumnCount; ++column) {
            all += text(set, column) + QLatin1Char('\n');
        }
        return all;
    }
    const bool isNumber = index.column() == NumberColumn || index.column() == LoadColumn ||
                          index.column() == AmountColumn || index.column() == ReserveColumn;
    if (role == Qt::TextAlignmentRole && isNumber) {
        return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    }
    return {};
}

} // namespace levelbar::ui
