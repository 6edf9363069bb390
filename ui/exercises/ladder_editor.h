// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/ladder.h"
#include "core/review/history.h"

#include <QWidget>

#include <vector>

class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;
class QSpinBox;

namespace levelbar::ui {

// One ladder: which rungs there are, their order from easy to hard, and their gates. By keyboard:
// Ctrl with an arrow moves a rung, Delete takes it out.
class LadderEditor : public QWidget {
    Q_OBJECT

public:
    explicit LadderEditor(QWidget* parent = nullptr);

    // Begins with the first ladder that this exercise stands on, at its rung; else with the first
    // of its pattern.
    void
    start(const Exercise& exercise, const Library& library, const std::vector<Ladder>& ladders);

    void refuse(const QString& sentence);

Q_SIGNALS:
    void kept(const levelbar::Ladder& ladder);
    void shippedWanted(const levelbar::Ladder& ladder); // drop the gym's own version
    void cancelled();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void makeLayout();
    QWidget* makeRungs();
    QWidget* makeGates();
    void chooseLadder();
    void fillRungs(int row);
    void showRung();
    void takeGates();
    void addRung();
    void removeRung();
    void moveRung(int by);
    void setChanged();
    [[nodiscard]] Rung* chosenRung();

    Library m_library;
    std::vector<Ladder> m_ladders;
    Ladder m_ladder; // as it is on the screen
    bool m_isFilling = false;
    QComboBox* m_which;
    QLabel* m_line; // why it was refused
    QListWidget* m_rungs;
    QComboBox* m_exercise;
    QPushButton* m_remove;
    QPushButton* m_shipped;
    QLineEdit* m_setting;
    QSpinBox* m_upAmount;
    QSpinBox* m_upSets;
    QSpinBox* m_upSessions;
    QSpinBox* m_upLoad;
    QSpinBox* m_downPain;
    QSpinBox* m_downDays;
    QSpinBox* m_downFewer;
    QSpinBox* m_downSessions;
};

} // namespace levelbar::ui
