// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/member/member.h"
#include "storage/contact_store.h"
#include "storage/incident_store.h"
#include "ui/report/file_chooser.h"
#include "ui/workspace.h"

#include <QWidget>

#include <vector>

class QComboBox;
class QLabel;
class QStackedWidget;
class QVBoxLayout;

namespace levelbar::ui {

class CardForm;
class IncidentForm;

// A window of its own, one key away from anywhere: what to say on the telephone, where the
// defibrillator is, who calls, and whom to call for a person. It reads the logbook and needs no
// network. Behind it: where the card is written, and the report afterwards.
class EmergencyWindow : public QWidget {
    Q_OBJECT

public:
    explicit EmergencyWindow(Workspace& workspace,
                             FileChooser choose = &chooseFileToSave,
                             QWidget* parent = nullptr);

    // In front, with the contacts of this person when it is stored.
    void open(MemberId about);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void closeEvent(QCloseEvent* event) override;

private:
    QWidget* makeCard();
    void makeLines(QVBoxLayout& layout);
    void fillPeople(MemberId about);
    void showCard();
    void showContacts();
    void openForm();
    void openReport();
    void keep(const storage::EmergencyCard& card,
              const std::vector<storage::EmergencyContact>& contacts);
    [[nodiscard]] const Member* chosen() const;

    Workspace& m_workspace;
    QStackedWidget* m_stack;
    CardForm* m_form;
    IncidentForm* m_report;
    QLabel* m_call;
    QLabel* m_address;
    QLabel* m_defibrillator;
    QComboBox* m_person;
    QLabel* m_contacts;
    std::vector<Member> m_people;
};

} // namespace levelbar::ui
