// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/background_review.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QListWidget;

namespace levelbar::ui {

class SidesChart;

// Sides: everyone as a dot with whiskers in one measure, and beside it the three lists over the
// whole roster.
class SidesPage : public QWidget {
    Q_OBJECT

public:
    explicit SidesPage(BackgroundReview& review, QWidget* parent = nullptr);

Q_SIGNALS:
    void opened(levelbar::MemberId member);

private:
    struct TierList {
        QLabel* title = nullptr;
        QListWidget* list = nullptr;
    };

    TierList makeList(const QString& name, const QString& accessible);
    void take(const ReviewedRosterPointer& roster);
    void showMeasure();
    void
    fillList(const TierList& target, SideTier tier, const QString& title, const QString& chance);

    ReviewedRosterPointer m_roster;
    QComboBox* m_measure;
    SidesChart* m_chart;
    TierList m_look;
    TierList m_act;
    TierList m_sendOn;
};

} // namespace levelbar::ui
