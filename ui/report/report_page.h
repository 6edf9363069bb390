// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/background_review.h"
#include "ui/report/file_chooser.h"
#include "ui/report/report_content.h"
#include "ui/workspace.h"

#include <QWidget>

#include <memory>
#include <optional>

class QComboBox;
class QDateEdit;
class QFormLayout;
class QLabel;
class QPrintPreviewWidget;
class QPrinter;
class QPushButton;

namespace levelbar::ui {

// Reports: choose one, see its pages, print it or save it.
class ReportPage : public QWidget {
    Q_OBJECT

public:
    enum Kind { Person, Home, Summary };

    ReportPage(Workspace& workspace, BackgroundReview& review, QWidget* parent = nullptr);
    ~ReportPage() override;

    void openPerson(MemberId member); // the person's page

    void setChooser(FileChooser chooser) { m_chooser = std::move(chooser); }

    // What is shown; nothing before the first review, or when the roster is empty.
    [[nodiscard]] const std::optional<ReportContent>& content() const { return m_content; }

protected:
    void showEvent(QShowEvent* event) override;

private:
    void nameWidgets();
    void makeLayout();
    void makeShortcuts();
    void fillChoices();
    void fit(); // rows of the kind chosen
    void refresh();
    [[nodiscard]] std::optional<ReportContent> read();
    [[nodiscard]] ReviewedRosterPointer rosterOf(Day day);
    [[nodiscard]] Paper paper() const;
    void save(const QString& ending);
    void print();

    Workspace& m_workspace;
    BackgroundReview& m_review;
    std::optional<ReportContent> m_content;
    ReviewedRosterPointer m_past; // of the last period that ended before today
    FileChooser m_chooser = chooseFileToSave;
    QFormLayout* m_form;
    QComboBox* m_kind;
    QComboBox* m_person;
    QComboBox* m_home;
    QComboBox* m_group;
    QDateEdit* m_from;
    QDateEdit* m_to;
    QComboBox* m_paper;
    QPushButton* m_save;
    QPushButton* m_csv;
    QPushButton* m_print;
    QLabel* m_line;
    std::unique_ptr<QPrinter> m_printer; // the preview paints on it
    QPrintPreviewWidget* m_preview = nullptr;
};

} // namespace levelbar::ui
