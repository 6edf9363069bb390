// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/floor/floor_sheet.h"
#include "ui/workspace.h"

#include <QWidget>

#include <map>
#include <optional>
#include <vector>

class QKeyEvent;
class QLabel;
class QLineEdit;
class QListWidget;
class QSpinBox;

namespace levelbar::ui {

// The end of a class: what is known of its sets, how hard it was for each who came (one digit), how
// long it lasted, and what to do about somebody afterwards. Every entry is kept at once.
class ClosingPanel : public QWidget {
    Q_OBJECT

public:
    explicit ClosingPanel(Workspace& workspace, QWidget* parent = nullptr);

    // The class as it stands now; keeps the cursor on its person.
    void show(const FloorSheet& sheet, const FloorReference& reference);
    // The cursor to the first who has not been asked.
    void begin();

Q_SIGNALS:
    void left();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct Person {
        MemberId member;
        int bib = 0; // 0: none
        QString name;
        int notKnown = 0;
        QStringList notAsked; // why sets were set aside, each reason once
        std::optional<int> rating;
    };

    void makeLayout();
    void fillPeople(const FloorSheet& sheet, const FloorReference& reference);
    void showPeople();
    void showCount();
    void rate(std::optional<int> rating);
    bool takeKey(const QKeyEvent& event);
    void keepMinutes();
    void keepFollowUp();
    [[nodiscard]] const Person* current() const;
    template <typename Work> bool write(storage::ActionKind kind, const Work& work);

    Workspace& m_workspace;
    std::optional<MeetingId> m_meeting;
    std::vector<Person> m_people;
    QString m_counted; // what is known of all sets
    QLabel* m_count;
    QListWidget* m_list;
    QSpinBox* m_minutes;
    QLineEdit* m_followUp;
    QLineEdit* m_due;
    QLabel* m_said;
};

} // namespace levelbar::ui
