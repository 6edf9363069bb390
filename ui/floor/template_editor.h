// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/floor/floor_sheet.h"

#include <QWidget>

#include <vector>

class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;
class QSpinBox;

namespace levelbar::ui {

// What the class does: exercises in order, each with its sets and, when wanted, its reps. Nothing
// is written before "Keep".
class TemplateEditor : public QWidget {
    Q_OBJECT

public:
    explicit TemplateEditor(QWidget* parent = nullptr);

    // Leaves what is being edited alone while it is not kept and the class is the same.
    void
    setTemplate(const FloorReference& reference, ClassId groupClass, const FloorTemplate& items);

    [[nodiscard]] const std::vector<TemplateItem>& items() const { return m_items; }

    // Edits stand until they are kept: reading the class again must not overwrite them.
    void setEdited(bool isEdited) { m_isEdited = isEdited; }

Q_SIGNALS:
    void kept(const std::vector<levelbar::TemplateItem>& items);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* buildAdding();
    QWidget* buildFacts();
    QWidget* buildButtons();
    void findExercises(const QString& text);
    void add(ExerciseId exercise);
    void addFound(int row);
    void move(int step);
    void removeCurrent();
    void changeCurrent();
    void showItems(int current);
    void showCurrent();
    void edited(int current);
    [[nodiscard]] TemplateItem* current();
    [[nodiscard]] QString lineOf(const TemplateItem& item) const;

    const FloorReference* m_reference = nullptr;
    ClassId m_class;
    std::vector<TemplateItem> m_items;
    bool m_isEdited = false;
    QLabel* m_notice;
    QListWidget* m_list;
    QSpinBox* m_sets;
    QSpinBox* m_reps;
    QLineEdit* m_filter;
    QListWidget* m_found;
    QPushButton* m_keep;
};

} // namespace levelbar::ui
