// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/action.h"
#include "ui/gym/station_model.h"
#include "ui/workspace.h"

#include <QWidget>

#include <functional>

class QComboBox;
class QLabel;
class QLineEdit;
class QTableView;

namespace levelbar::ui {

class RackPicture;

// Rooms, racks and benches of the gym, what of them is gone today, and the chosen rack drawn. A
// room is there once something is said to stand in it, and gone with the last thing.
class StationPanel : public QWidget {
    Q_OBJECT

public:
    explicit StationPanel(Workspace& workspace, QWidget* parent = nullptr);

private:
    void makeLayout();
    QWidget* makeAddLine();
    void refresh();
    void showChosen();
    void add();
    void removeChosen();
    void keep(const StationEdit& edit);
    void keepGone(const PieceKey& key, int count);
    void refuse(const QString& sentence);
    bool write(storage::ActionKind kind, const std::function<void(storage::WriteScope&)>& work);

    Workspace& m_workspace;
    StationModel* m_model;
    QTableView* m_table;
    QComboBox* m_what;
    QLineEdit* m_name;
    QLabel* m_line;   // why something was refused
    QLabel* m_chosen; // which rack is drawn
    RackPicture* m_picture;
};

} // namespace levelbar::ui
