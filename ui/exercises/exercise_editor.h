// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/exercise_detail.h"
#include "core/exercise/ladder.h"
#include "core/review/history.h"

#include <QWidget>

#include <optional>

class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QSpinBox;

namespace levelbar::ui {

// An exercise as it was typed, checked: with its detail and, of the gym's own, the ladder that has
// a rung more for it (the rung's exercise key is still empty for a new one).
struct TypedExercise {
    Exercise exercise;
    ExerciseDetail detail;
    std::optional<Ladder> ladder;
    std::size_t rung = 0; // which of the ladder's is the new one
};

// The form of one exercise, filled by keyboard from top to bottom. Of a shipped exercise only the
// name and how it is taught can be changed; what it is stays.
class ExerciseEditor : public QWidget {
    Q_OBJECT

public:
    explicit ExerciseEditor(QWidget* parent = nullptr);

    // An exercise that is not stored yet begins a new one.
    void start(const Exercise& exercise,
               const ExerciseDetail& detail,
               const Library& library,
               const std::vector<Ladder>& ladders);

    void refuse(const QString& sentence);

Q_SIGNALS:
    void kept(const levelbar::ui::TypedExercise& typed);
    void cancelled();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void makeForm();
    void addTeaching(QFormLayout* form);
    void fillLadders();
    void fillRungs();
    void save();
    [[nodiscard]] Result<TypedExercise> typed() const;
    [[nodiscard]] Result<Exercise> typedExercise() const;
    [[nodiscard]] const Ladder* chosenLadder() const;

    Exercise m_exercise; // as it was
    Library m_library;
    std::vector<Ladder> m_ladders;
    QLabel* m_title;
    QLabel* m_line; // why it was refused
    QLineEdit* m_name;
    QComboBox* m_pattern;
    QComboBox* m_implement;
    QComboBox* m_sides;
    QComboBox* m_amount;
    QComboBox* m_load;
    QComboBox* m_base;
    QSpinBox* m_ratio;
    QLineEdit* m_cues;
    QLineEdit* m_cautions;
    QLineEdit* m_areas;
    QLineEdit* m_angle;
    QComboBox* m_ladder;
    QComboBox* m_after;
    QSpinBox* m_gate; // amount to move up
};

} // namespace levelbar::ui
