// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/report/chart_file.h"
#include "ui/report/file_chooser.h"
#include "ui/workspace.h"

#include <QToolButton>

namespace levelbar::ui {

// "Save chart": a button with a menu of formats.
class ChartSaver : public QToolButton {
    Q_OBJECT

public:
    explicit ChartSaver(Workspace& workspace, QWidget* parent = nullptr);

    // Greyed while the figure is empty.
    void setSubject(ChartSubject subject);

    void setChooser(FileChooser chooser) { m_chooser = std::move(chooser); }

private:
    void addFormat(const QString& label, ChartFormat format);
    void save(ChartFormat format);

    Workspace& m_workspace;
    ChartSubject m_subject;
    FileChooser m_chooser = chooseFileToSave;
};

} // namespace levelbar::ui
