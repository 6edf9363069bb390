// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"
#include "core/exercise/effort.h"
#include "core/review/history.h"

#include <QWidget>

#include <vector>

class QLabel;
class QLineEdit;
class QTableView;

namespace levelbar::ui {

class SetsModel;
class WordsFilter;

// A person's sets, newest first, filtered as one types.
class SetsPanel : public QWidget {
    Q_OBJECT

public:
    explicit SetsPanel(QWidget* parent = nullptr);

    void show(std::vector<DoneSet> sets, const Library& library, EffortScale effort);
    void clearFilter(); // another person

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void makeTable();
    void tellCount();

    SetsModel* m_sets;
    WordsFilter* m_filtered;
    QLineEdit* m_filter;
    QLabel* m_count;
    QTableView* m_table;
};

} // namespace levelbar::ui
