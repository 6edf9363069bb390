// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/person_editor.h"

#include "core/base/number.h"
#include "storage/class_store.h"
#include "storage/member_store.h"
#include "ui/change_notifier.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kClassRole = Qt::UserRole + 1;
constexpr int kClassRows = 4;
constexpr int kNoteRows = 2;
constexpr int kTight = 4; // pixels: the form must fit a small screen

// "not said", then the words of an enumeration from 1 on.
template <typename T> void fillWords(QComboBox* box, int count, std::string_view (*wordOf)(T))
{
    box->addItem(PersonEditor::tr("not said"), 0);
    for (int value = 1; value <= count; ++value) {
        box->addItem(word(wordOf(static_cast<T>(value))), value);
    }
}

template <typename T> void chooseWord(QComboBox* box, const std::optional<T>& value)
{
    box->setCurrentIndex(value ? box->findData(static_cast<int>(*value)) : 0);
}

template <typename T> std::optional<T> chosenWord(const QComboBox* box)
{
    const int value = box->currentData().toInt();
    return value == 0 ? std::nullopt : std::optional(static_cast<T>(value));
}

std::string numberText(const QLineEdit* edit)
{
    return edit->text().trimmed().replace(QLatin1Char(','), QLatin1Char('.')).toStdString();
}

} // namespace

PersonEditor::PersonEditor(Workspace& workspace, QWidget* parent)
    : QDialog(parent)
    , m_workspace(workspace)
    , m_refusal(new QLabel(this))
    , m_code(new QLineEdit(this))
    , m_name(new QLineEdit(this))
    , m_birth(new QLineEdit(this))
    , m_sex(new QComboBox(this))
    , m_stature(new QLineEdit(this))
    , m_mass(new QLineEdit(this))
    , m_dominant(new QComboBox(this))
    , m_experience(new QComboBox(this))
    , m_goal(new QComboBox(this))
    , m_group(new QLineEdit(this))
    , m_note(new QPlainTextEdit(this))
    , m_classes(new QListWidget(this))
    , m_archived(new QCheckBox(tr("Does not come any more; what was logged stays"), this))
{
    setObjectName(QStringLiteral("personEditor"));
    fillWords<Sex>(m_sex, 2, sexWord);
    fillWords<Experience>(m_experience, 3, experienceWord);
    fillWords<Goal>(m_goal, 5, goalWord);
    m_dominant->addItem(tr("not said"), 0);
    for (const Side side : {Side::Left, Side::Right}) {
        m_dominant->addItem(word(sideWord(side)), static_cast<int>(side));
    }
    makeLayout();
}

void PersonEditor::addRow(QFormLayout* form, const QString& label, QWidget* field, const char* name)
{
    field->setObjectName(QLatin1String(name));
    field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
    form->addRow(label, field);
}

void PersonEditor::makeLayout()
{
    m_refusal->setObjectName(QStringLiteral("personRefusal"));
    m_refusal->setWordWrap(true);
    m_refusal->setTextFormat(Qt::PlainText);
    m_birth->setPlaceholderText(QStringLiteral("1990-05-31"));
    m_note->setTabChangesFocus(true);
    m_note->setFixedHeight(kNoteRows * fontMetrics().lineSpacing() + 14);
    m_classes->setFixedHeight(kClassRows * (fontMetrics().lineSpacing() + 6));
    m_archived->setObjectName(QStringLiteral("personArchived"));
    auto* form = new QFormLayout;
    form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    form->setVerticalSpacing(kTight);
    addRow(form, tr("&Name (only if they agree)"), m_name, "personName");
    addRow(form, tr("&Id"), m_code, "personCode");
    addRow(form, tr("&Classes (space bar)"), m_classes, "personClasses");
    addRow(form, tr("&Experience"), m_experience, "personExperience");
    addRow(form, tr("&Goal"), m_goal, "personGoal");
    addRow(form, tr("&Born on"), m_birth, "personBirth");
    addRow(form, tr("&Sex, for norms"), m_sex, "personSex");
    addRow(form, tr("&Tall, cm"), m_stature, "personStature");
    addRow(form, tr("Body &mass at intake, kg"), m_mass, "personMass");
    addRow(form, tr("&Dominant side"), m_dominant, "personDominant");
    addRow(form, tr("G&roup or employer"), m_group, "personGroup");
    addRow(form, tr("N&ote, private"), m_note, "personNote");
    auto* keep = new QPushButton(tr("Keep (Ctrl+Enter)"), this);
    keep->setObjectName(QStringLiteral("personKeep"));
    keep->setAutoDefault(false);
    auto* leave = new QPushButton(tr("Leave it (Esc)"), this);
    leave->setAutoDefault(false);
    connect(keep, &QPushButton::clicked, this, &PersonEditor::save);
    connect(leave, &QPushButton::clicked, this, &PersonEditor::reject);
    auto* buttons = new QHBoxLayout;
    buttons->addStretch(1);
    buttons->addWidget(keep);
    buttons->addWidget(leave);
    auto* caution = new QLabel(
        tr("Ask what the house's screening asks before the first hard set; local rules come first. "
           "Until then: body weight and light dumbbells."),
        this);
    caution->setWordWrap(true);
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(form);
    layout->addWidget(m_archived);
    layout->addWidget(caution);
    layout->addWidget(m_refusal);
    layout->addLayout(buttons);
    resize(520, sizeHint().height());
}

void PersonEditor::startNew()
{
    std::vector<std::string> codes;
    for (const Member& member : storage::MemberStore(m_workspace.logbook).all(true)) {
        codes.push_back(member.code);
    }
    Member member;
    member.code = proposeMemberCode(codes);
    setWindowTitle(tr("A new person"));
    fill(member);
}

void PersonEditor::start(MemberId member)
{
    const auto stored = storage::MemberStore(m_workspace.logbook).byId(member);
    if (!stored) {
        return; // erased meanwhile
    }
    setWindowTitle(tr("Change %1").arg(plain(stored->name.empty() ? stored->code : stored->name)));
    fill(*stored);
}

void PersonEditor::fill(const Member& member)
{
    m_member = member;
    m_code->setText(plain(member.code));
    m_name->setText(plain(member.name));
    m_birth->setText(member.birthDate ? plain(isoText(*member.birthDate)) : QString());
    chooseWord(m_sex, member.sex);
    m_stature->setText(member.statureTenthMillimetres
                           ? plain(decimalText(*member.statureTenthMillimetres, 2))
                           : QString());
    m_mass->setText(member.intakeMass ? plain(member.intakeMass->number()) : QString());
    chooseWord(m_dominant, member.dominantSide);
    chooseWord(m_experience, member.experience);
    chooseWord(m_goal, member.goal);
    m_group->setText(plain(member.group));
    m_note->setPlainText(plain(member.note));
    m_archived->setChecked(member.isArchived);
    m_archived->setVisible(member.id.isStored());
    m_refusal->clear();
    fillClasses();
    show();
    m_name->setFocus(Qt::OtherFocusReason);
    m_name->selectAll();
}

void PersonEditor::fillClasses()
{
    const storage::ClassStore store(m_workspace.logbook);
    const auto own =
        m_member.id.isStored() ? store.classesOf(m_member.id) : std::vector<storage::GroupClass>{};
    m_classes->clear();
    for (const storage::GroupClass& groupClass : store.all()) {
        auto* item = new QListWidgetItem(plain(groupClass.name), m_classes);
        item->setData(kClassRole, static_cast<qlonglong>(groupClass.id.value));
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
        const bool isIn = std::find(own.begin(), own.end(), groupClass) != own.end();
        item->setCheckState(isIn ? Qt::Checked : Qt::Unchecked);
    }
    m_classes->setCurrentRow(0);
}

Result<Member> PersonEditor::typed()
{
    Member member = m_member;
    std::optional<Fault> fault;
    // The first field that is wrong.
    const auto take = [&](const QWidget* field, auto result, const auto& set) {
        if (fault) {
            return;
        }
        if (result) {
            set(*result);
        } else {
            fault = result.error();
            m_wrong = field->accessibleName();
        }
    };
    const auto trimmed = [](const QLineEdit* edit) { return edit->text().trimmed().toStdString(); };
    take(m_code, checkMemberCode(trimmed(m_code)), [&](const auto& text) { member.code = text; });
    take(m_name, checkName(trimmed(m_name), kLongestMemberText), [&](const auto& text) {
        member.name = text;
    });
    take(m_group, checkName(trimmed(m_group), kLongestMemberText), [&](const auto& text) {
        member.group = text;
    });
    take(m_note,
         checkText(m_note->toPlainText().toStdString(), kLongestNote),
         [&](const auto& text) { member.note = text; });
    member.birthDate.reset();
    if (const std::string text = trimmed(m_birth); !text.empty()) {
        take(m_birth, parseDay(text), [&](Day day) { member.birthDate = day; });
    }
    member.statureTenthMillimetres.reset();
    if (const std::string text = numberText(m_stature); !text.empty()) {
        take(m_stature, parseStature(text), [&](int s) { member.statureTenthMillimetres = s; });
    }
    member.intakeMass.reset();
    if (const std::string text = numberText(m_mass); !text.empty()) {
        take(m_mass, parseBodyMass(text), [&](Mass mass) { member.intakeMass = mass; });
    }
    member.sex = chosenWord<Sex>(m_sex);
    member.dominantSide = chosenWord<Side>(m_dominant);
    member.experience = chosenWord<Experience>(m_experience);
    member.goal = chosenWord<Goal>(m_goal);
    member.isArchived = m_archived->isChecked();
    if (fault) {
        return tl::unexpected(*fault);
    }
    return member;
}

void PersonEditor::refuse(const QString& what, const Fault& fault)
{
    m_refusal->setText(tr("Not kept. %1: %2.").arg(what, words(fault)));
}

void PersonEditor::save()
{
    const auto member = typed();
    if (!member) {
        refuse(m_wrong, member.error());
        return;
    }
    const auto same = storage::MemberStore(m_workspace.logbook).find(member->code);
    if (same && same->id != m_member.id) {
        m_refusal->setText(tr("Not kept. The id %1 is taken already.").arg(plain(member->code)));
        return;
    }
    MemberId id = m_member.id;
    const bool isDone = perform(m_workspace.prompter, [&] {
        const bool isNew = !id.isStored();
        storage::Action action(m_workspace.logbook,
                               isNew ? storage::ActionKind::AddMember
                                     : storage::ActionKind::EditMember,
                               m_workspace.clock.now());
        if (isNew) {
            id = storage::MemberStore::add(action, *member);
        } else {
            storage::MemberStore::update(action, *member);
        }
        for (int row = 0; row < m_classes->count(); ++row) {
            const QListWidgetItem* item = m_classes->item(row);
            storage::ClassStore::setMembership(action,
                                               ClassId{item->data(kClassRole).toLongLong()},
                                               id,
                                               item->checkState() == Qt::Checked);
        }
        m_workspace.notifier.announce(action.commit());
    });
    if (isDone) {
        accept();
        Q_EMIT kept(id);
    }
}

void PersonEditor::keyPressEvent(QKeyEvent* event)
{
    const bool isEnter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (isEnter && event->modifiers().testFlag(Qt::ControlModifier)) {
        save();
    } else if (isEnter) {
        focusNextChild();
    } else {
        QDialog::keyPressEvent(event);
    }
}

} // namespace levelbar::ui
