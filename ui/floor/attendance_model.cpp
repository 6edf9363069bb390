// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/attendance_model.h"

#include "ui/floor/floor_words.h"

#include <QCollator>

#include <algorithm>

namespace levelbar::ui {

void AttendanceModel::setPeople(const FloorReference& reference,
                                const FloorSheet& sheet,
                                const std::vector<MemberId>& members)
{
    m_came.clear();
    for (const storage::Attendance& attendance : sheet.attendance) {
        if (attendance.came.value_or(false)) {
            m_came.insert(attendance.member);
        }
    }
    for (const FloorRow& row : sheet.rows) {
        m_came.insert(row.member); // whoever lifted was there
    }
    const std::set<MemberId> own(members.begin(), members.end());
    m_everyone.clear();
    for (const auto& [id, member] : reference.people) {
        if (member.isArchived && !m_came.contains(id)) {
            continue;
        }
        m_everyone.push_back({id,
                              personName(reference, id),
                              QString::fromStdString(member.code),
                              !own.contains(id)});
    }
    QCollator collator;
    collator.setCaseSensitivity(Qt::CaseInsensitive);
    std::sort(m_everyone.begin(), m_everyone.end(), [&](const Person& a, const Person& b) {
        if (a.isGuest != b.isGuest) {
            return b.isGuest;
        }
        const int order = collator.compare(a.name, b.name);
        return order != 0 ? order < 0 : a.member < b.member;
    });
    show();
}

void AttendanceModel::setFilter(const QString& filter)
{
    m_filter = filter.trimmed();
    show();
}

void AttendanceModel::show()
{
    std::vector<Person> shown;
    for (const Person& person : m_everyone) {
        const bool fits = person.name.contains(m_filter, Qt::CaseInsensitive) ||
                          person.code.contains(m_filter, Qt::CaseInsensitive);
        const bool isListed =
            m_filter.isEmpty() ? !person.isGuest || m_came.contains(person.member) : fits;
        if (isListed) {
            shown.push_back(person);
        }
    }
    if (shown == m_shown) {
        if (!m_shown.empty()) {
            Q_EMIT dataChanged(index(0), index(rowCount() - 1));
        }
        return;
    }
    beginResetModel();
    m_shown = std::move(shown);
    endResetModel();
}

std::optional<MemberId> AttendanceModel::memberAt(const QModelIndex& index) const
{
    if (!index.isValid() || index.row() >= rowCount()) {
        return std::nullopt;
    }
    return m_shown[static_cast<std::size_t>(index.row())].member;
}

int AttendanceModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_shown.size());
}

QVariant AttendanceModel::data(const QModelIndex& index, int role) const
{
    const auto member = memberAt(index);
    if (!member) {
        return {};
    }
    const Person& person = m_shown[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Qt::DisplayRole:
        return person.isGuest ? tr("%1 (not in this class)").arg(person.name) : person.name;
    case Qt::ToolTipRole:
        return person.code;
    case Qt::AccessibleTextRole:
        return hasCome(*member) ? tr("%1, came").arg(person.name)
                                : tr("%1, not marked").arg(person.name);
    case Qt::CheckStateRole:
        return static_cast<int>(hasCome(*member) ? Qt::Checked : Qt::Unchecked);
    case IsGuestRole:
        return person.isGuest;
    default:
        return {};
    }
}

Qt::ItemFlags AttendanceModel::flags(const QModelIndex& index) const
{
    return index.isValid() ? Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable
                           : Qt::NoItemFlags;
}

bool AttendanceModel::setData(const QModelIndex& index, const QVariant& value, int role)
{
    const auto member = memberAt(index);
    if (!member || role != Qt::CheckStateRole) {
        return false;
    }
    Q_EMIT markWanted(*member, value.toInt() == Qt::Checked);
    return true;
}

} // namespace levelbar::ui
