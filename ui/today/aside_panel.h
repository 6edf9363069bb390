// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/today/settled.h"
#include "ui/background_review.h"
#include "ui/workspace.h"

#include <QWidget>

#include <span>
#include <vector>

class QListWidget;

namespace levelbar::ui {

// What was put off or settled, so that it can be found and opened again.
class AsidePanel : public QWidget {
    Q_OBJECT

public:
    explicit AsidePanel(Workspace& workspace, QWidget* parent = nullptr);

    void show(std::span<const SettledReason> settled, const ReviewedRosterPointer& roster);
    void toggle(); // comes with the focus, or goes

Q_SIGNALS:
    void left(); // it went, and the focus with it

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void openCurrent();

    Workspace& m_workspace;
    std::vector<SettledReason> m_settled;
    QListWidget* m_list;
};

} // namespace levelbar::ui
