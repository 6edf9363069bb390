// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/emergency/incident_form.h"

#include "core/today/due_day.h"
#include "storage/member_store.h"
#include "storage/today_store.h"
#include "storage/whole_file.h"
#include "ui/emergency/incident_pages.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QComboBox>
#include <QCompleter>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kListWidth = 240;
constexpr int kLongestIncidentLine = 500;

template <typename T> T* called(T* widget, const char* name, const QString& accessible)
{
    widget->setObjectName(QLatin1String(name));
    widget->setAccessibleName(accessible);
    return widget;
}

QString shownName(const Member& member)
{
    return member.name.empty()
               ? plain(member.code)
               : QStringLiteral("%1 (%2)").arg(plain(member.name), plain(member.code));
}

std::string lineOf(const QLineEdit* edit)
{
    return edit->text().simplified().toStdString();
}

} // namespace

IncidentForm::IncidentForm(Workspace& workspace, FileChooser choose, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_choose(std::move(choose))
    , m_list(called(new QListWidget(this), "incidentList", tr("Reports written")))
    , m_day(called(new QLineEdit(this), "incidentDay", tr("Day")))
    , m_time(called(new QLineEdit(this), "incidentTime", tr("Time of day")))
    , m_person(called(new QComboBox(this), "incidentPerson", tr("Whom it hit")))
    , m_what(called(new QPlainTextEdit(this), "incidentWhat", tr("What happened")))
    , m_firstAid(called(new QPlainTextEdit(this), "incidentFirstAid", tr("First aid")))
    , m_witness(called(new QLineEdit(this), "incidentWitness", tr("Who saw it")))
    , m_followUp(called(new QLineEdit(this), "incidentFollowUp", tr("What follows")))
    , m_due(called(new QLineEdit(this), "incidentDue", tr("By when: days from today, or a date")))
    , m_author(called(new QLineEdit(this), "incidentAuthor", tr("Written by, initials")))
    , m_said(called(new QLabel(this), "incidentSaid", tr("What is wrong")))
{
    setObjectName(QStringLiteral("incidentForm"));
    m_list->setFixedWidth(kListWidth);
    m_list->setWordWrap(true);
    for (QLineEdit* edit : {m_witness, m_followUp, m_author}) {
        edit->setMaxLength(kLongestIncidentLine);
    }
    m_person->setEditable(true);
    m_person->setInsertPolicy(QComboBox::NoInsert);
    m_person->completer()->setFilterMode(Qt::MatchContains);
    m_person->completer()->setCompletionMode(QCompleter::PopupCompletion);
    for (QPlainTextEdit* edit : {m_what, m_firstAid}) {
        edit->setTabChangesFocus(true);
    }
    m_said->setWordWrap(true);
    auto* right = new QVBoxLayout;
    makeFields(*right);
    makeButtons(*right);
    auto* layout = new QHBoxLayout(this);
    layout->addWidget(m_list);
    layout->addLayout(right, 1);
    connect(m_list, &QListWidget::currentRowChanged, this, &IncidentForm::open);
}

void IncidentForm::makeFields(QVBoxLayout& layout)
{
    auto* when = new QHBoxLayout;
    when->addWidget(m_day);
    when->addWidget(m_time);
    auto* next = new QHBoxLayout;
    next->addWidget(m_followUp, 3);
    next->addWidget(m_due, 1);
    m_due->setPlaceholderText(tr("in days"));
    m_person->lineEdit()->setPlaceholderText(tr("A person of the gym, or any name"));
    auto* form = new QFormLayout;
    form->addRow(tr("Day and time"), when);
    form->addRow(tr("&Whom it hit"), m_person);
    form->addRow(tr("W&hat happened"), m_what);
    form->addRow(tr("First &aid"), m_firstAid);
    form->addRow(tr("Who saw &it"), m_witness);
    form->addRow(tr("What follows, by when"), next);
    form->addRow(tr("Written &by"), m_author);
    auto* caution = new QLabel(
        tr("Write what was seen and done, not what may have caused it. Who else must be told, and "
           "how long this is kept, your local rules say."),
        this);
    caution->setWordWrap(true);
    layout.addLayout(form, 1);
    layout.addWidget(caution);
    layout.addWidget(m_said);
}

void IncidentForm::makeButtons(QVBoxLayout& layout)
{
    auto* keepButton = called(new QPushButton(tr("&Keep"), this), "incidentKeep", tr("Keep"));
    auto* saveButton = called(
        new QPushButton(tr("Keep and &save as PDF …"), this), "incidentSave", tr("Save as PDF"));
    auto* newButton = called(new QPushButton(tr("&New report"), this), "incidentNew", tr("New"));
    auto* leave =
        called(new QPushButton(tr("Back to the &card"), this), "incidentLeave", tr("Back"));
    auto* buttons = new QHBoxLayout;
    for (QPushButton* button : {keepButton, saveButton, newButton, leave}) {
        buttons->addWidget(button);
    }
    buttons->addStretch(1);
    layout.addLayout(buttons);
    connect(keepButton, &QPushButton::clicked, this, [this] {
        if (keep()) {
            m_said->setText(tr("Kept."));
        }
    });
    connect(saveButton, &QPushButton::clicked, this, &IncidentForm::save);
    connect(newButton, &QPushButton::clicked, this, [this] {
        if (mayLeave()) {
            startNew({});
        }
    });
    connect(leave, &QPushButton::clicked, this, [this] {
        if (mayLeave()) {
            Q_EMIT left();
        }
    });
}

void IncidentForm::fillPeople()
{
    m_people = storage::MemberStore(m_workspace.logbook).all(true);
    m_person->clear();
    for (const Member& member : m_people) {
        m_person->addItem(shownName(member));
    }
    m_person->setCurrentIndex(-1);
}

QString IncidentForm::nameOf(const storage::Incident& incident) const
{
    const auto found = std::find_if(m_people.begin(), m_people.end(), [&](const Member& member) {
        return incident.member == member.id;
    });
    return found == m_people.end() ? plain(incident.who) : shownName(*found);
}

void IncidentForm::refresh()
{
    const QSignalBlocker blocker(m_list);
    m_all = storage::IncidentStore(m_workspace.logbook).all();
    m_list->clear();
    for (const storage::Incident& incident : m_all) {
        m_list->addItem(tr("%1: %2").arg(dayText(incident.day), nameOf(incident)));
        if (incident.id == m_shown.id) {
            m_list->setCurrentRow(m_list->count() - 1);
        }
    }
    if (m_all.empty()) {
        auto* none = new QListWidgetItem(tr("No report was written yet."), m_list);
        none->setFlags(Qt::ItemIsEnabled);
    }
}

void IncidentForm::startNew(MemberId about)
{
    fillPeople();
    storage::Incident incident;
    incident.day = m_workspace.clock.today();
    if (about.isStored()) {
        incident.member = about;
    }
    fill(incident);
    refresh();
    m_what->setFocus(Qt::OtherFocusReason);
}

void IncidentForm::fill(const storage::Incident& incident)
{
    m_shown = incident;
    m_day->setText(plain(isoText(incident.day)));
    m_time->setText(incident.at ? plain(text(*incident.at)) : QString());
    m_person->setCurrentText(nameOf(incident));
    m_what->setPlainText(plain(incident.what));
    m_firstAid->setPlainText(plain(incident.firstAid));
    m_witness->setText(plain(incident.witness));
    m_followUp->setText(plain(incident.followUp));
    m_due->clear();
    m_author->setText(plain(incident.writtenBy));
    m_said->clear();
}

void IncidentForm::open(int row)
{
    const auto place = static_cast<std::size_t>(row);
    if (row < 0 || place >= m_all.size() || m_all[place].id == m_shown.id) {
        return;
    }
    const storage::Incident wanted = m_all[place];
    if (mayLeave()) {
        fill(wanted);
    }
    refresh();
}

void IncidentForm::takeWho(storage::Incident& incident) const
{
    const QString who = m_person->currentText().simplified();
    incident.member.reset();
    incident.guest = who == nameOf(m_shown) ? m_shown.guest : std::nullopt;
    incident.who.clear();
    for (const Member& member : m_people) {
        if (who == shownName(member)) {
            incident.member = member.id;
            incident.guest.reset();
            return;
        }
    }
    incident.who = who.toStdString();
}

bool IncidentForm::takeWhen(storage::Incident& incident)
{
    const auto day = parseDay(lineOf(m_day));
    if (!day) {
        refuse(words(day.error()));
        return false;
    }
    incident.day = *day;
    incident.at.reset();
    const std::string at = lineOf(m_time);
    if (at.empty()) {
        return true;
    }
    const auto time = parseTimeOfDay(at);
    if (!time) {
        refuse(words(time.error()));
        return false;
    }
    incident.at = *time;
    return true;
}

std::optional<storage::Incident> IncidentForm::taken()
{
    storage::Incident incident = m_shown;
    if (!takeWhen(incident)) {
        return std::nullopt;
    }
    takeWho(incident);
    incident.what = m_what->toPlainText().trimmed().toStdString();
    incident.firstAid = m_firstAid->toPlainText().trimmed().toStdString();
    incident.witness = lineOf(m_witness);
    incident.followUp = lineOf(m_followUp);
    incident.writtenBy = lineOf(m_author);
    return incident;
}

bool IncidentForm::mayLeave()
{
    const auto incident = taken();
    if (incident && *incident == m_shown) {
        return true;
    }
    return m_workspace.prompter.confirm(tr("What is typed in the report is not kept yet."),
                                        tr("Leave it unkept"));
}

void IncidentForm::refuse(const QString& sentence)
{
    m_said->setText(tr("Not kept: %1.").arg(sentence));
}

std::optional<FollowUp> IncidentForm::takenFollowUp(const storage::Incident& incident)
{
    FollowUp followUp;
    if (m_due->text().trimmed().isEmpty()) {
        return followUp;
    }
    const Day today = m_workspace.clock.today();
    const auto due = parseDueDay(lineOf(m_due), today);
    if (!due || incident.followUp.empty()) {
        refuse(due ? tr("say what follows by then") : words(due.error()));
        return std::nullopt;
    }
    followUp.text = incident.followUp;
    followUp.owner = incident.writtenBy;
    followUp.written = today;
    followUp.due = *due;
    followUp.member = incident.member;
    return followUp;
}

bool IncidentForm::keep()
{
    auto incident = taken();
    if (!incident) {
        return false;
    }
    if (incident->what.empty()) {
        refuse(tr("say what happened"));
        m_what->setFocus(Qt::OtherFocusReason);
        return false;
    }
    const auto followUp = takenFollowUp(*incident);
    if (!followUp) {
        return false;
    }
    incident->writtenAt = m_workspace.clock.now();
    const bool isKept = perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::WriteIncident, m_workspace.clock.now());
        if (incident->id.isStored()) {
            storage::IncidentStore::update(action, *incident);
        } else {
            incident->id = storage::IncidentStore::add(action, *incident);
        }
        if (!followUp->text.empty()) {
            storage::TodayStore::write(action, *followUp);
        }
        m_workspace.notifier.announce(action.commit());
    });
    if (isKept) {
        fill(*incident);
        refresh();
    }
    return isKept;
}

void IncidentForm::save()
{
    if (!keep()) {
        return;
    }
    const QString path = m_choose(this, tr("Incident %1.pdf").arg(plain(isoText(m_shown.day))));
    if (path.isEmpty()) {
        m_said->setText(tr("Kept, not saved as PDF."));
        return;
    }
    perform(m_workspace.prompter, [&] {
        const QByteArray bytes = incidentPdf(m_shown, nameOf(m_shown));
        storage::writeWholeFile(path.toStdString(),
                                [&](std::ostream& out) { out.write(bytes.data(), bytes.size()); });
        m_said->setText(tr("Kept, and saved as PDF."));
    });
}

} // namespace levelbar::ui
