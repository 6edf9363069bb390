// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/class_plan.h"
#include "core/review/history.h"

#include <QWidget>

class QLabel;
class QLineEdit;
class QTableWidget;

namespace levelbar::ui {

// The exercises of a class and their number of sets, edited in place and by keyboard: type a name
// and press Enter to add; + and - change the sets, Ctrl+Up and Ctrl+Down the order, Delete removes.
class TemplateEditor : public QWidget {
    Q_OBJECT

public:
    explicit TemplateEditor(QWidget* parent = nullptr);

    void show(const std::vector<TemplateItem>& items, const Library& library, bool isProposed);

Q_SIGNALS:
    void edited(const std::vector<levelbar::TemplateItem>& items);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void addTyped();
    bool changeRow(int key, bool isControl);
    void fill();

    std::vector<TemplateItem> m_items;
    Library m_library;
    QLabel* m_hint;
    QTableWidget* m_table;
    QLineEdit* m_add;
};

} // namespace levelbar::ui
