// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/floor/floor_sheet.h"

#include <QAbstractListModel>
#include <QString>

#include <set>
#include <vector>

namespace levelbar::ui {

// Who may be marked as come: the class's people and whoever came; while a filter is typed, also
// everybody else on the roster whom it fits.
class AttendanceModel : public QAbstractListModel {
    Q_OBJECT

public:
    enum Role { IsGuestRole = Qt::UserRole }; // not one of this class

    using QAbstractListModel::QAbstractListModel;

    void setPeople(const FloorReference& reference,
                   const FloorSheet& sheet,
                   const std::vector<MemberId>& members);
    void setFilter(const QString& filter);

    [[nodiscard]] int cameCount() const { return static_cast<int>(m_came.size()); }

    [[nodiscard]] bool hasCome(MemberId member) const { return m_came.contains(member); }

    [[nodiscard]] std::optional<MemberId> memberAt(const QModelIndex& index) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    // A tick is a wish; it shows once it is in the logbook.
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

Q_SIGNALS:
    void markWanted(levelbar::MemberId member, bool came);

private:
    struct Person {
        MemberId member;
        QString name;
        QString code;
        bool isGuest = false;

        friend bool operator==(const Person&, const Person&) = default;
    };

    void show();

    std::vector<Person> m_everyone; // the class's people first, each part by name
    std::vector<Person> m_shown;
    std::set<MemberId> m_came;
    QString m_filter;
};

} // namespace levelbar::ui
