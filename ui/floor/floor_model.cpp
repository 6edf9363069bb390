// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_model.h"

#include "core/base/number.h"
#include "ui/words.h"

#include <QLocale>

namespace levelbar::ui {

namespace {

QString loadText(Mass load)
{
    return load.thousandths() == 0
               ? QString()
               : plain(load.number()) + QLatin1Char(' ') + plain(unitWord(load.unit()));
}

QString amountText(std::optional<int> amount, AmountKind kind)
{
    if (!amount) {
        return FloorModel::tr("reps?");
    }
    switch (kind) {
    case AmountKind::Seconds:
        return FloorModel::tr("%1 s").arg(plain(decimalText(*amount, 1)));
    case AmountKind::Metres:
        return FloorModel::tr("%1 m").arg(plain(decimalText(*amount, 1)));
    case AmountKind::Reps:
        break;
    }
    return QLocale().toString(*amount);
}

QString joined(const QString& load, const QString& amount)
{
    return load.isEmpty() ? QStringLiteral("× ") + amount : load + QStringLiteral(" × ") + amount;
}

QString sideText(Side side)
{
    switch (side) {
    case Side::Left:
        return FloorModel::tr("left");
    case Side::Right:
        return FloorModel::tr("right");
    case Side::Both:
        break;
    }
    return {};
}

} // namespace

QString plannedText(const PlannedSet& planned, const Exercise& exercise)
{
    return joined(loadText(planned.load), amountText(planned.amount, exercise.amount));
}

QString doneText(const DoneSet& set)
{
    const PerformedSet& performed = set.performed;
    QString text;
    if (performed.reps) {
        text = joined(loadText(performed.load), QLocale().toString(*performed.reps));
    } else if (performed.secondsTenths) {
        text = joined(loadText(performed.load),
                      amountText(performed.secondsTenths, AmountKind::Seconds));
    } else {
        text = joined(loadText(performed.load),
                      amountText(performed.metresTenths, AmountKind::Metres));
    }
    if (performed.reserve) {
        text += FloorModel::tr(", %1 left").arg(plain(levelbar::text(*performed.reserve)));
    }
    return text;
}

FloorModel::FloorModel(FloorSession& session, QObject* parent)
    : QAbstractTableModel(parent)
    , m_session(session)
{
}

void FloorModel::reset()
{
    beginResetModel();
    m_typing.clear();
    endResetModel();
}

void FloorModel::refresh()
{
    if (rowCount() > 0 && columnCount() > 0) {
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    }
}

const FloorCell& FloorModel::cell(const QModelIndex& index) const
{
    return m_session.cell(static_cast<std::size_t>(index.row()),
                          static_cast<std::size_t>(index.column()));
}

int FloorModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_session.present().size());
}

int FloorModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_session.columns().size());
}

void FloorModel::touch(const QModelIndex& cell)
{
    Q_EMIT dataChanged(cell, cell);
}

QString FloorModel::typed(const QModelIndex& cell) const
{
    const auto found = m_typing.find({cell.row(), cell.column()});
    return found == m_typing.end() ? QString() : found->second.text;
}

void FloorModel::setTyped(const QModelIndex& cell, const QString& text)
{
    if (text.isEmpty()) {
        m_typing.erase({cell.row(), cell.column()});
    } else {
        m_typing[{cell.row(), cell.column()}] = {text, QString()};
    }
    touch(cell);
}

void FloorModel::setFault(const QModelIndex& cell, const QString& sentence)
{
    m_typing[{cell.row(), cell.column()}].fault = sentence;
    touch(cell);
}

bool FloorModel::isOpen(const QModelIndex& index) const
{
    return index.isValid() && !cell(index).done;
}

QString FloorModel::place(const QModelIndex& index) const
{
    const Member& member = m_session.present()[static_cast<std::size_t>(index.row())];
    const FloorColumn& column = m_session.columns()[static_cast<std::size_t>(index.column())];
    const QString name = plain(member.name.empty() ? member.code : member.name);
    const QString set = tr("set %1").arg(column.number);
    const QString side = sideText(column.side);
    return QStringList{
        name, plain(column.exercise->name), side.isEmpty() ? set : set + QLatin1Char(' ') + side}
        .join(QStringLiteral(", "));
}

QVariant FloorModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (section < 0 || role != Qt::DisplayRole) {
        return {};
    }
    if (orientation == Qt::Vertical) {
        if (section >= rowCount()) {
            return {};
        }
        const Member& member = m_session.present()[static_cast<std::size_t>(section)];
        return plain(member.name.empty() ? member.code : member.name);
    }
    if (section >= columnCount()) {
        return {};
    }
    const FloorColumn& column = m_session.columns()[static_cast<std::size_t>(section)];
    const QString side = sideText(column.side);
    return tr("%1\nset %2 %3")
        .arg(plain(column.exercise->name))
        .arg(column.number)
        .arg(side)
        .trimmed();
}

QVariant FloorModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) {
        return {};
    }
    const FloorCell& found = cell(index);
    const Exercise& exercise =
        *m_session.columns()[static_cast<std::size_t>(index.column())].exercise;
    switch (role) {
    case Qt::DisplayRole:
        if (found.done) {
            return doneText(*found.done);
        }
        return found.planned ? plannedText(*found.planned, exercise) : QString();
    case Qt::AccessibleTextRole: {
        const QString planned =
            found.planned ? plannedText(*found.planned, exercise) : tr("nothing");
        const QString done = found.done ? tr("done %1, %2")
                                              .arg(doneText(*found.done),
                                                   word(howKnownWord(found.done->performed.known)))
                                        : tr("not known");
        return tr("%1: planned %2; %3").arg(place(index), planned, done);
    }
    case StateRole:
        if (!found.done) {
            return Open;
        }
        if (found.done->performed.reps == 0) {
            return Failed;
        }
        return found.done->performed.known == HowKnown::Accepted ||
                       found.done->performed.known == HowKnown::Group
                   ? Accepted
                   : Counted;
    case TypedRole:
        return typed(index);
    case FaultRole: {
        const auto typing = m_typing.find({index.row(), index.column()});
        return typing == m_typing.end() ? QString() : typing->second.fault;
    }
    default:
        return {};
    }
}

} // namespace levelbar::ui
