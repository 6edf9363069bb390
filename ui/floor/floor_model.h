// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/floor/floor_session.h"

#include <QAbstractTableModel>

#include <map>

namespace levelbar::ui {

// The grid of the class floor: people down, sets across, and what is being typed.
class FloorModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Role {
        StateRole = Qt::UserRole + 1, // State
        TypedRole,                    // what is typed and not stored
        FaultRole,                    // why it was not taken; empty = it was not refused
    };

    enum State { Open, Accepted, Counted, Failed };

    explicit FloorModel(FloorSession& session, QObject* parent = nullptr);

    void reset();
    void refresh(); // same people and columns, other contents

    [[nodiscard]] QString typed(const QModelIndex& cell) const;
    void setTyped(const QModelIndex& cell, const QString& text);
    void setFault(const QModelIndex& cell, const QString& sentence);
    [[nodiscard]] bool isOpen(const QModelIndex& cell) const;

    // "Ilse Brandvold, Barbell bench press, set 2"
    [[nodiscard]] QString place(const QModelIndex& cell) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant
    headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    struct Typing {
        QString text;
        QString fault;
    };

    [[nodiscard]] const FloorCell& cell(const QModelIndex& index) const;
    void touch(const QModelIndex& cell);

    FloorSession& m_session;
    std::map<std::pair<int, int>, Typing> m_typing;
};

// "60 kg × 8": what is planned.
[[nodiscard]] QString plannedText(const PlannedSet& planned, const Exercise& exercise);

// "60 kg × 9, 2 in reserve": what was done.
[[nodiscard]] QString doneText(const DoneSet& set);

} // namespace levelbar::ui
