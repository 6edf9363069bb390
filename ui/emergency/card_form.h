// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "storage/contact_store.h"
#include "storage/incident_store.h"

#include <QWidget>

#include <array>
#include <vector>

class QGroupBox;
class QLabel;
class QLineEdit;

namespace levelbar::ui {

// Where the emergency card and a person's contacts are written, before anything happens.
class CardForm : public QWidget {
    Q_OBJECT

public:
    explicit CardForm(QWidget* parent = nullptr);

    // Without a name nobody's contacts are asked for.
    void show(const storage::EmergencyCard& card,
              const QString& name,
              const std::vector<storage::EmergencyContact>& contacts);

Q_SIGNALS:
    void kept(const levelbar::storage::EmergencyCard& card,
              const std::vector<levelbar::storage::EmergencyContact>& contacts);
    void left();

private:
    struct ContactRow {
        QLineEdit* name = nullptr;
        QLineEdit* relation = nullptr;
        QLineEdit* phone = nullptr;
    };

    void makeContacts();
    void keep();

    QLineEdit* m_address;
    QLineEdit* m_defibrillator;
    QLineEdit* m_caller;
    QGroupBox* m_contacts;
    QLabel* m_said;
    std::array<ContactRow, 2> m_rows;
    std::vector<storage::EmergencyContact> m_others; // beyond the rows: kept as they are
};

} // namespace levelbar::ui
