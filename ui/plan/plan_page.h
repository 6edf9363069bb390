// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/class_store.h"
#include "ui/plan/plan_reader.h"
#include "ui/report/file_chooser.h"
#include "ui/workspace.h"

#include <QWidget>

#include <optional>
#include <vector>

class QComboBox;
class QLabel;
class QListWidget;
class QSpinBox;
class QTableWidget;

namespace levelbar::ui {

class CompanyEditor;
class WeekEditor;

// The plan of a class: its template and weeks, and who gets which load at which rack next time.
class PlanPage : public QWidget {
    Q_OBJECT

public:
    explicit PlanPage(Workspace& workspace,
                      FileChooser choose = &chooseFileToSave,
                      QWidget* parent = nullptr);

protected:
    void showEvent(QShowEvent* event) override;

private:
    void makeLayout();
    void connectParts();
    void refresh();
    void showNext();
    void showTargets(const std::vector<PlanItem>& items);
    void showNotes();
    void printSheet();
    void editCompany();
    template <typename Work>
    void write(storage::ActionKind kind, const QString& sentence, const Work& work);
    [[nodiscard]] std::optional<ClassId> chosen() const;

    Workspace& m_workspace;
    FileChooser m_choose;
    bool m_isStale = true;
    int m_racksThere = 0; // as the gym has it on that day
    std::vector<storage::GroupClass> m_classes;
    ClassPlan m_plan;
    MeetingPlanAnswer m_answer;
    QComboBox* m_class;
    QLabel* m_next;
    QSpinBox* m_racks;
    WeekEditor* m_weeks;
    QTableWidget* m_targets;
    QListWidget* m_notes;
    QLabel* m_said;
    CompanyEditor* m_company = nullptr; // once it was wanted
};

} // namespace levelbar::ui
