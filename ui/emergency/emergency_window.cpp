// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/emergency/emergency_window.h"

#include "storage/member_store.h"
#include "ui/emergency/card_form.h"
#include "ui/emergency/incident_form.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QCloseEvent>
#include <QComboBox>
#include <QCompleter>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

// Read at arm's length, by somebody in a hurry.
constexpr double kSaidPoints = 24.0;
constexpr double kStepPoints = 15.0;

QLabel* printed(const char* name, double points, bool isBold, QWidget* parent)
{
    auto* label = new QLabel(parent);
    label->setObjectName(QLatin1String(name));
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    QFont font = label->font();
    font.setPointSizeF(points);
    font.setBold(isBold);
    label->setFont(font);
    return label;
}

QString orMissing(const std::string& text, const QString& missing)
{
    return text.empty() ? missing : plain(text);
}

} // namespace

EmergencyWindow::EmergencyWindow(Workspace& workspace, FileChooser choose, QWidget* parent)
    : QWidget(parent, Qt::Window)
    , m_workspace(workspace)
    , m_stack(new QStackedWidget(this))
    , m_form(new CardForm(this))
    , m_report(new IncidentForm(workspace, std::move(choose), this))
    , m_call(printed("emergencyCall", kStepPoints, false, this))
    , m_address(printed("emergencyAddress", kSaidPoints, true, this))
    , m_defibrillator(printed("emergencyDefibrillator", kSaidPoints, true, this))
    , m_person(new QComboBox(this))
    , m_contacts(printed("emergencyContacts", kSaidPoints, true, this))
{
    setObjectName(QStringLiteral("emergencyWindow"));
    setWindowTitle(tr("Emergency"));
    m_person->setObjectName(QStringLiteral("emergencyPerson"));
    m_person->setAccessibleName(tr("Person whose contacts are shown"));
    m_person->setEditable(true);
    m_person->setInsertPolicy(QComboBox::NoInsert);
    m_person->completer()->setFilterMode(Qt::MatchContains);
    m_person->completer()->setCompletionMode(QCompleter::PopupCompletion);
    m_person->lineEdit()->setPlaceholderText(tr("Begin to type a name"));
    m_stack->addWidget(makeCard());
    m_stack->addWidget(m_form);
    m_stack->addWidget(m_report);
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(m_stack);
    resize(900, 700);
    connect(m_person, &QComboBox::currentIndexChanged, this, &EmergencyWindow::showContacts);
    connect(m_form, &CardForm::kept, this, &EmergencyWindow::keep);
    connect(m_form, &CardForm::left, this, &EmergencyWindow::showCard);
    connect(m_report, &IncidentForm::left, this, &EmergencyWindow::showCard);
}

QWidget* EmergencyWindow::makeCard()
{
    auto* card = new QWidget(this);
    auto* layout = new QVBoxLayout(card);
    makeLines(*layout);
    auto* caution = new QLabel(
        tr("First aid by those trained for it. What the voice on the telephone says, and your "
           "gym's own emergency plan, go before this card."),
        card);
    caution->setWordWrap(true);
    auto* change = new QPushButton(tr("&Change the card or the contacts"), card);
    change->setObjectName(QStringLiteral("emergencyChange"));
    auto* report = new QPushButton(tr("&Write down what happened"), card);
    report->setObjectName(QStringLiteral("emergencyReport"));
    auto* closeButton = new QPushButton(tr("Close (Esc)"), card);
    closeButton->setObjectName(QStringLiteral("emergencyClose"));
    auto* buttons = new QHBoxLayout;
    for (QPushButton* button : {report, change, closeButton}) {
        button->setAutoDefault(false);
        buttons->addWidget(button);
    }
    layout->addStretch(1);
    layout->addWidget(caution);
    layout->addLayout(buttons);
    connect(change, &QPushButton::clicked, this, &EmergencyWindow::openForm);
    connect(report, &QPushButton::clicked, this, &EmergencyWindow::openReport);
    connect(closeButton, &QPushButton::clicked, this, &QWidget::close);
    return card;
}

// In the order in which it is needed. Who calls, who fetches and who meets the help are the parts
// of an emergency plan (common practice, no source).
void EmergencyWindow::makeLines(QVBoxLayout& layout)
{
    const auto step = [&](const QString& text) {
        QLabel* label = printed("", kStepPoints, false, this);
        label->setText(text);
        layout.addWidget(label);
    };
    step(tr("1  Call the emergency number of your country."));
    layout.addWidget(m_call);
    step(tr("Say this address:"));
    layout.addWidget(m_address);
    layout.addSpacing(10);
    step(tr("2  Somebody fetches the defibrillator:"));
    layout.addWidget(m_defibrillator);
    layout.addSpacing(10);
    step(tr("3  Somebody meets the help at the door. One person stays with whoever is hurt."));
    layout.addSpacing(10);
    step(tr("4  Then call their own people:"));
    layout.addWidget(m_person);
    layout.addWidget(m_contacts);
}

void EmergencyWindow::open(MemberId about)
{
    const bool isTyping = isVisible() && m_stack->currentIndex() != 0;
    if (!isTyping) {
        perform(m_workspace.prompter, [&] {
            fillPeople(about);
            showCard();
        });
    }
    show();
    activateWindow();
}

void EmergencyWindow::fillPeople(MemberId about)
{
    const QSignalBlocker blocker(m_person);
    m_people = storage::MemberStore(m_workspace.logbook).all();
    m_person->clear();
    m_person->setCurrentIndex(-1);
    for (const Member& member : m_people) {
        m_person->addItem(member.name.empty() ? plain(member.code)
                                              : QStringLiteral("%1 (%2)").arg(plain(member.name),
                                                                              plain(member.code)));
    }
    const auto found = std::find_if(
        m_people.begin(), m_people.end(), [about](const Member& one) { return one.id == about; });
    m_person->setCurrentIndex(found == m_people.end() ? -1
                                                      : static_cast<int>(found - m_people.begin()));
}

const Member* EmergencyWindow::chosen() const
{
    const auto place = static_cast<std::size_t>(m_person->currentIndex());
    return m_person->currentIndex() < 0 || place >= m_people.size() ? nullptr : &m_people[place];
}

void EmergencyWindow::showCard()
{
    m_stack->setCurrentIndex(0);
    perform(m_workspace.prompter, [this] {
        const auto card = storage::IncidentStore(m_workspace.logbook).emergencyCard();
        m_call->setText(orMissing(
            card.caller, tr("Who calls, and what to dial first, is not written down yet.")));
        m_address->setText(orMissing(card.address, tr("The address is not written down yet.")));
        m_defibrillator->setText(
            orMissing(card.defibrillator, tr("Where it is, is not written down yet.")));
        showContacts();
    });
}

void EmergencyWindow::showContacts()
{
    const Member* member = chosen();
    if (member == nullptr) {
        m_contacts->clear();
        return;
    }
    perform(m_workspace.prompter, [&] {
        QStringList lines;
        for (const auto& contact : storage::ContactStore(m_workspace.logbook).of(member->id)) {
            const QString name =
                contact.relation.empty()
                    ? plain(contact.name)
                    : tr("%1, %2").arg(plain(contact.name), plain(contact.relation));
            lines += tr("%1: %2").arg(name, plain(contact.phone));
        }
        m_contacts->setText(lines.isEmpty() ? tr("Nobody is written down to call for them.")
                                            : lines.join(QLatin1Char('\n')));
    });
}

void EmergencyWindow::openForm()
{
    const Member* member = chosen();
    perform(m_workspace.prompter, [&] {
        m_form->show(storage::IncidentStore(m_workspace.logbook).emergencyCard(),
                     member == nullptr ? QString() : m_person->currentText(),
                     member == nullptr ? std::vector<storage::EmergencyContact>()
                                       : storage::ContactStore(m_workspace.logbook).of(member->id));
        m_stack->setCurrentWidget(m_form);
    });
}

void EmergencyWindow::openReport()
{
    const Member* member = chosen();
    perform(m_workspace.prompter, [&] {
        m_report->startNew(member == nullptr ? MemberId{} : member->id);
        m_stack->setCurrentWidget(m_report);
    });
}

void EmergencyWindow::keep(const storage::EmergencyCard& card,
                           const std::vector<storage::EmergencyContact>& contacts)
{
    const Member* member = chosen();
    const bool isKept = perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::EditEmergencyCard, m_workspace.clock.now());
        storage::IncidentStore::setEmergencyCard(action, card);
        if (member != nullptr) {
            storage::ContactStore::set(action, member->id, contacts);
        }
        m_workspace.notifier.announce(action.commit());
    });
    if (isKept) {
        showCard();
    }
}

void EmergencyWindow::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape) {
        close();
        return;
    }
    QWidget::keyPressEvent(event);
}

void EmergencyWindow::closeEvent(QCloseEvent* event)
{
    if (m_stack->currentWidget() == m_report && !m_report->mayLeave()) {
        event->ignore();
        return;
    }
    QWidget::closeEvent(event);
}

} // namespace levelbar::ui
