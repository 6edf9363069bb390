// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTableView>

namespace levelbar::ui {

class FloorModel;

// The grid under the instructor's keys. Digits type into the current cell; Enter stores (an empty
// cell: as planned) and goes to the next open one; leaving a cell stores what was typed; + and -
// change the load; Escape gives up; Backspace on nothing typed takes back. A held key does not run
// on. Names stay in sight in the row header.
class FloorGrid : public QTableView {
    Q_OBJECT

public:
    explicit FloorGrid(FloorModel& model, QWidget* parent = nullptr);

    // The next cell without a set: down the column, then the next column. Invalid: none.
    [[nodiscard]] QModelIndex nextOpen(const QModelIndex& from) const;

Q_SIGNALS:
    void storeWanted(const QModelIndex& cell); // typed text, or as planned
    void loadStepWanted(const QModelIndex& cell, int direction);
    void takeBackWanted();
    void placeChanged(const QModelIndex& cell);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

private:
    bool typeInto(const QModelIndex& cell, const QString& text);

    FloorModel& m_floor;
};

} // namespace levelbar::ui
