// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/bodyweight/push_up_review.h"
#include "ui/workspace.h"

#include <QWidget>

class QLabel;
class QLineEdit;
class QListWidget;
class QSpinBox;

namespace levelbar::ui {

// The person's own weight as a load: push-ups in kilograms and reps, in words and never on one
// axis with a bar; and the readings of a bathroom scale that make them the person's own.
class PushUpPanel : public QWidget {
    Q_OBJECT

public:
    explicit PushUpPanel(Workspace& workspace, QWidget* parent = nullptr);

    // The reckoning waits until the panel is seen. Both must stay until the next call.
    void show(const MemberHistory& history, const Library& library);

protected:
    void showEvent(QShowEvent* event) override;

private:
    void makeLayout();
    QWidget* makeReadings();
    void refresh();
    void say(const PushUpReview& review);
    void addReading();
    void removeReading();
    void write(MemberId member, const DatedReading* added, const DatedReading* removed);
    [[nodiscard]] RackHoles rackOf(MemberId member);
    [[nodiscard]] std::optional<Estimate> benchMaximum() const;

    Workspace& m_workspace;
    const MemberHistory* m_history = nullptr;
    const Library* m_library = nullptr;
    bool m_isStale = true;
    bool m_isRackAssumed = false;
    RackHoles m_holes;
    std::vector<DatedReading> m_readings;
    QSpinBox* m_fewest;
    QSpinBox* m_most;
    QLabel* m_next;
    QLabel* m_others;
    QLabel* m_basis;
    QSpinBox* m_hole; // 0: on the floor
    QLineEdit* m_lockedOut;
    QLineEdit* m_atChest;
    QLabel* m_line; // why a reading was refused
    QListWidget* m_list;
};

} // namespace levelbar::ui
