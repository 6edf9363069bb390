// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/emergency/card_form.h"

#include "ui/words.h"

#include <QFormLayout>
#include <QGroupBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace levelbar::ui {

namespace {

constexpr int kLongestCardLine = 200;
constexpr int kLongestContactWord = 100;

QLineEdit* field(const char* name, const QString& accessible, int longest, QWidget* parent)
{
    auto* edit = new QLineEdit(parent);
    edit->setObjectName(QLatin1String(name));
    edit->setAccessibleName(accessible);
    edit->setMaxLength(longest);
    return edit;
}

std::string typed(const QLineEdit* edit)
{
    return edit->text().simplified().toStdString();
}

} // namespace

CardForm::CardForm(QWidget* parent)
    : QWidget(parent)
    , m_address(field("cardAddress", tr("Address to say"), kLongestCardLine, this))
    , m_defibrillator(
          field("cardDefibrillator", tr("Where the defibrillator is"), kLongestCardLine, this))
    , m_caller(field("cardCaller", tr("Who calls, and the number"), kLongestCardLine, this))
    , m_contacts(new QGroupBox(this))
    , m_said(new QLabel(this))
{
    setObjectName(QStringLiteral("cardForm"));
    m_address->setPlaceholderText(tr("Street, house, which door, which floor"));
    m_defibrillator->setPlaceholderText(tr("On the wall beside the front desk"));
    m_caller->setPlaceholderText(tr("Front desk; from inside the house dial 0 first"));
    m_said->setObjectName(QStringLiteral("cardSaid"));
    m_said->setWordWrap(true);
    auto* form = new QFormLayout;
    form->addRow(tr("&Address to say"), m_address);
    form->addRow(tr("&Defibrillator"), m_defibrillator);
    form->addRow(tr("&Who calls, and the number"), m_caller);
    makeContacts();
    auto* keepButton = new QPushButton(tr("&Keep"), this);
    keepButton->setObjectName(QStringLiteral("cardKeep"));
    auto* leaveButton = new QPushButton(tr("&Back without keeping"), this);
    leaveButton->setObjectName(QStringLiteral("cardLeave"));
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(keepButton);
    buttons->addWidget(leaveButton);
    buttons->addStretch(1);
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(form);
    layout->addWidget(m_contacts);
    layout->addWidget(m_said);
    layout->addLayout(buttons);
    layout->addStretch(1);
    connect(keepButton, &QPushButton::clicked, this, &CardForm::keep);
    connect(leaveButton, &QPushButton::clicked, this, &CardForm::left);
}

void CardForm::makeContacts()
{
    auto* layout = new QFormLayout(m_contacts);
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const QString number = QString::number(i + 1);
        ContactRow& row = m_rows[i];
        row.name = field("", tr("Name of contact %1").arg(number), kLongestContactWord, m_contacts);
        row.relation = field(
            "", tr("What contact %1 is to them").arg(number), kLongestContactWord, m_contacts);
        row.phone =
            field("", tr("Telephone of contact %1").arg(number), kLongestContactWord, m_contacts);
        row.name->setObjectName(QStringLiteral("contactName%1").arg(number));
        row.relation->setObjectName(QStringLiteral("contactRelation%1").arg(number));
        row.phone->setObjectName(QStringLiteral("contactPhone%1").arg(number));
        row.name->setPlaceholderText(tr("Name"));
        row.relation->setPlaceholderText(tr("Sister, friend …"));
        row.phone->setPlaceholderText(tr("Telephone"));
        auto* line = new QHBoxLayout;
        line->addWidget(row.name, 2);
        line->addWidget(row.relation, 1);
        line->addWidget(row.phone, 1);
        layout->addRow(tr("Call %1").arg(number), line);
    }
}

void CardForm::show(const storage::EmergencyCard& card,
                    const QString& name,
                    const std::vector<storage::EmergencyContact>& contacts)
{
    m_address->setText(plain(card.address));
    m_defibrillator->setText(plain(card.defibrillator));
    m_caller->setText(plain(card.caller));
    m_contacts->setVisible(!name.isEmpty());
    m_contacts->setTitle(tr("Whom to call for %1").arg(name));
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const bool isThere = i < contacts.size();
        m_rows[i].name->setText(isThere ? plain(contacts[i].name) : QString());
        m_rows[i].relation->setText(isThere ? plain(contacts[i].relation) : QString());
        m_rows[i].phone->setText(isThere ? plain(contacts[i].phone) : QString());
    }
    m_others.clear();
    for (std::size_t i = m_rows.size(); i < contacts.size(); ++i) {
        m_others.push_back(contacts[i]);
    }
    m_said->clear();
    m_address->setFocus(Qt::OtherFocusReason);
}

void CardForm::keep()
{
    std::vector<storage::EmergencyContact> contacts;
    for (const ContactRow& row : m_rows) {
        const storage::EmergencyContact contact{
            typed(row.name), typed(row.relation), typed(row.phone)};
        if (contact == storage::EmergencyContact{}) {
            continue;
        }
        if (contact.name.empty() || contact.phone.empty()) {
            m_said->setText(tr("Not kept: a contact needs a name and a telephone number."));
            (contact.name.empty() ? row.name : row.phone)->setFocus(Qt::OtherFocusReason);
            return;
        }
        contacts.push_back(contact);
    }
    contacts.insert(contacts.end(), m_others.begin(), m_others.end());
    Q_EMIT kept({typed(m_address), typed(m_defibrillator), typed(m_caller)}, contacts);
}

} // namespace levelbar::ui
