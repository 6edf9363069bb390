// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/today/lines_model.h"

#include "core/today/proposed_action.h"
#include "ui/words.h"

#include <algorithm>

namespace levelbar::ui {

namespace {

QString nameOf(const TodayLine& line)
{
    return plain(line.name.empty() ? line.code : line.name);
}

QString reasonsOf(const TodayLine& line)
{
    QString all = words(reasonPhrase(line.reasons.front()));
    for (std::size_t i = 1; i < line.reasons.size(); ++i) {
        const QString more = words(reasonPhrase(line.reasons[i]));
        all += QLatin1Char(' ') + (i == 1 ? LinesModel::tr("Also: %1").arg(more) : more);
    }
    return all;
}

bool isSafety(const Attention& reason)
{
    return reason.kind == AttentionKind::Pain || reason.kind == AttentionKind::Clearance ||
           (reason.kind == AttentionKind::Imbalance && reason.tier == SideTier::SendOn);
}

} // namespace

void LinesModel::show(TodayList list)
{
    beginResetModel();
    m_list = std::move(list);
    endResetModel();
}

void LinesModel::showAll()
{
    beginResetModel();
    m_isAll = true;
    endResetModel();
}

bool LinesModel::hasRest() const
{
    return !m_isAll && m_list.lines.size() > kLinesShown;
}

std::size_t LinesModel::shown() const
{
    return m_isAll ? m_list.lines.size() : std::min(m_list.lines.size(), kLinesShown);
}

const TodayLine* LinesModel::line(int row) const
{
    const auto place = static_cast<std::size_t>(row);
    return row >= 0 && place < shown() ? &m_list.lines[place] : nullptr;
}

int LinesModel::rowOf(MemberId member) const
{
    for (std::size_t i = 0; i < shown(); ++i) {
        if (m_list.lines[i].member == member) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

int LinesModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(shown()) + (hasRest() ? 1 : 0);
}

QVariant LinesModel::data(const QModelIndex& index, int role) const
{
    const TodayLine* of = line(index.row());
    if (of == nullptr) {
        const int rest = static_cast<int>(m_list.lines.size() - shown());
        const bool isText =
            role == Qt::DisplayRole || role == Qt::AccessibleTextRole || role == NameRole;
        return isText ? QVariant(tr("%n more (Enter)", nullptr, rest)) : QVariant();
    }
    switch (role) {
    case NameRole:
        return nameOf(*of);
    case ReasonRole:
        return reasonsOf(*of);
    case ActionRole:
        return words(actionPhrase(of->reasons.front()));
    case IsSafetyRole:
        return isSafety(of->reasons.front());
    case Qt::DisplayRole:
    case Qt::AccessibleTextRole:
        return tr("%1. %2 %3")
            .arg(nameOf(*of), reasonsOf(*of), words(actionPhrase(of->reasons.front())));
    default:
        return {};
    }
}

} // namespace levelbar::ui
