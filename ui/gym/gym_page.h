// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/gone_today.h"
#include "storage/action.h"
#include "ui/gym/kit_model.h"
#include "ui/workspace.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QLineEdit;
class QSpinBox;
class QTableView;
class QTabWidget;

namespace levelbar::ui {

class StationPanel;

// Gym: what this place owns to lift, its rooms, racks and benches, what is gone today, and how
// effort is shown. Each change is kept as it is made and can be taken back.
class GymPage : public QWidget {
    Q_OBJECT

public:
    explicit GymPage(Workspace& workspace, QWidget* parent = nullptr);

private:
    void makeLayout();
    QWidget* makeKit();
    QWidget* makeAddLine();
    QWidget* makeChoices();
    void refresh();
    void keep(const Kit& kit);
    void keepGone(const PieceKey& key, int count);
    void keepEffort(int place);
    void keepRest();
    void addTyped();
    void removeChosen();
    void refuse(const QString& sentence);
    void tellLoads(const Kit& kit);

    Workspace& m_workspace;
    KitModel* m_kit;
    QTableView* m_table;
    StationPanel* m_stations;
    QTabWidget* m_halves;
    QComboBox* m_what;
    QLineEdit* m_mass;
    QSpinBox* m_count;
    QLineEdit* m_collars;
    QLineEdit* m_step;
    QComboBox* m_effort;
    QLabel* m_assumed; // says that nobody has said yet
    QLabel* m_loads;   // what the usual bar can be given
    QLabel* m_line;    // why something was refused
};

} // namespace levelbar::ui
