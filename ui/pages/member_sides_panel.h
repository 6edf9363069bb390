// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/background_review.h"

#include <QWidget>

class QComboBox;
class QLabel;

namespace levelbar::ui {

class MemberSidesChart;

// A person's left and right in one measure: which one, what is said of it, and the picture.
class MemberSidesPanel : public QWidget {
    Q_OBJECT

public:
    explicit MemberSidesPanel(QWidget* parent = nullptr);

    // The picture is only reckoned while the panel is seen. `history` must stay until the next
    // call; null roster or somebody not in it: nothing to show.
    void show(const MemberHistory& history, const ReviewedRosterPointer& roster);
    void choose(int measure); // as the review's sides are ordered

protected:
    void showEvent(QShowEvent* event) override;

private:
    void fillMeasures(const MemberReview* review);
    void showMeasure();

    const MemberHistory* m_history = nullptr;
    ReviewedRosterPointer m_roster;
    const MemberReview* m_review = nullptr; // in m_roster
    bool m_isStale = true;
    QComboBox* m_measure;
    QLabel* m_words;
    MemberSidesChart* m_chart;
};

} // namespace levelbar::ui
