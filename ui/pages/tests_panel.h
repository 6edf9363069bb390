// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/test_trends.h"
#include "ui/background_review.h"

#include <QWidget>

class QLabel;
class QListWidget;

namespace levelbar::ui {

class TestChart;

// Every test of a person, body mass among them: last value, trend in words, and the chosen one's
// chart.
class TestsPanel : public QWidget {
    Q_OBJECT

public:
    explicit TestsPanel(QWidget* parent = nullptr);

    // Keeps the chosen test where the person has it.
    void show(const MemberHistory& history, const ReviewedRosterPointer& roster);

private:
    void fillList();
    void showTest();

    QListWidget* m_list;
    QLabel* m_words;
    TestChart* m_chart;
    ReviewedRosterPointer m_roster;
    std::vector<TestResults> m_results;
    const MemberReview* m_review = nullptr; // in m_roster
};

} // namespace levelbar::ui
