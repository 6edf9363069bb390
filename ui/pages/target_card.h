// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/effort.h"
#include "core/gym/kit.h"
#include "core/plan/target.h"
#include "core/review/history.h"

#include <QFrame>

class QDoubleSpinBox;
class QLabel;
class QSpinBox;

namespace levelbar::ui {

// The load of next time for one exercise and side: what to put on, why, and what would change it.
class TargetCard : public QFrame {
    Q_OBJECT

public:
    explicit TargetCard(QWidget* parent = nullptr);

    // What the card speaks about; `history` and `library` must outlive it or the next show().
    struct Subject {
        const MemberHistory* history = nullptr;
        const Library* library = nullptr;
        ExerciseId exercise; // not stored: nothing to show
        Side side = Side::Both;
        Day today;
    };

    void setGym(Kit kit, EffortScale effort);
    // Proposes reps from the handbook when the exercise or the person is another one.
    void show(const Subject& subject);

private:
    void makeLayout();
    void proposeReps();
    void fillScale();
    void refresh();
    void showTarget(const Target& target, const Exercise& exercise);
    [[nodiscard]] Reserve typedReserve() const;

    Subject m_subject;
    MemberId m_member;
    Kit m_kit;
    EffortScale m_effort = EffortScale::Reserve;
    QSpinBox* m_reps;
    QDoubleSpinBox* m_reserve;
    QLabel* m_scale;    // what the number beside the reps means
    QLabel* m_headline; // "Raise: 62.5 kg × 8, from 60 kg."
    QLabel* m_plates;   // plates and ramp
    QLabel* m_reasons;
};

} // namespace levelbar::ui
