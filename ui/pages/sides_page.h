// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/figures.h"
#include "ui/background_review.h"
#include "ui/workspace.h"

#include <QWidget>

#include <array>

class QLabel;
class QListWidget;
class QListWidgetItem;

namespace levelbar::ui {

class SideCard;
class SidesBar;
class SidesChart;

// Sides: everyone as a dot with whiskers in one measure, beside it the three lists, below it what
// is known of the one who is chosen.
class SidesPage : public QWidget {
    Q_OBJECT

public:
    SidesPage(Workspace& workspace, BackgroundReview& review, QWidget* parent = nullptr);

Q_SIGNALS:
    void opened(levelbar::MemberId member);

private:
    struct TierList {
        SideTier tier = SideTier::Act;
        QLabel* title = nullptr;
        QListWidget* list = nullptr;
    };

    TierList makeList(SideTier tier, const QString& name, const QString& accessible);
    void makeLayout();
    void connectParts();
    void take(const ReviewedRosterPointer& roster);
    void showAll();
    void fillList(const TierList& target);
    void chooseListed(const QListWidgetItem* item);
    void showCard();
    // How the chosen person's difference is trained now.
    [[nodiscard]] std::optional<SidePrescription> runningTraining() const;
    void keepTraining(const SidePrescription& prescription);
    void wantExtraSet(bool isWanted);
    void endTraining();
    void keepThreshold(double percent);
    void keepReason(const KnownReason& reason);
    void addReason(const QString& text);
    void endReason();

    Workspace& m_workspace;
    ReviewedRosterPointer m_roster;
    SidesBar* m_bar;
    SidesChart* m_chart;
    SideCard* m_card;
    QLabel* m_count;
    std::array<TierList, 3> m_lists;
};

} // namespace levelbar::ui
