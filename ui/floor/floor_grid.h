// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/floor/floor_entry.h"
#include "ui/floor/floor_model.h"

#include <QTableView>

class QAbstractButton;
class QLabel;

namespace levelbar::ui {

// The grid under the instructor's hand: every key goes to the cell under the cursor, and a cell
// is stored as it is left, whichever way.
class FloorGrid : public QTableView {
    Q_OBJECT

public:
    FloorGrid(FloorModel& model, FloorEntry& entry, QWidget* parent = nullptr);

    [[nodiscard]] std::optional<CellKey> currentKey() const;
    void goTo(const QModelIndex& index);
    // Columns as wide as their widest text, all alike.
    void fitColumns();

    // The sentence about the cell under the cursor: beneath it, or above it at the bottom.
    void placeFault();

Q_SIGNALS:
    void cursorMoved();
    // Enter was pressed and no other cell is open.
    void nothingLeft();
    void takeBackWanted();
    // Escape where nothing was being typed.
    void leftToPad();

protected:
    bool event(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void scrollContentsBy(int dx, int dy) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

private:
    // True when the key did something to the cell.
    bool handleKey(const QKeyEvent& event, const CellKey& key);
    bool handleText(const QString& text, const CellKey& key);
    void pressEnter(const CellKey& key);
    void pressBackspace(const CellKey& key, bool isRepeat);

    FloorModel& m_model;
    FloorEntry& m_entry;
    QLabel* m_fault;
    QAbstractButton* m_corner = nullptr;
};

} // namespace levelbar::ui
