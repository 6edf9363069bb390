// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/member_page.h"

#include "core/base/number.h"
#include "core/review/person_days.h"
#include "core/today/work_habit.h"
#include "storage/class_store.h"
#include "storage/gym_store.h"
#include "storage/history_reader.h"
#include "storage/library_store.h"
#include "storage/session_store.h"
#include "storage/set_store.h"
#include "ui/change_notifier.h"
#include "ui/pages/attendance_strip.h"
#include "ui/pages/member_sides_panel.h"
#include "ui/pages/person_editor.h"
#include "ui/pages/push_up_panel.h"
#include "ui/pages/sets_panel.h"
#include "ui/pages/setup_card_panel.h"
#include "ui/pages/strength_panel.h"
#include "ui/pages/target_card.h"
#include "ui/pages/tests_panel.h"
#include "ui/perform.h"
#include "ui/side_text.h"
#include "ui/words.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QShortcut>
#include <QSplitter>
#include <QTabWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kFactsWidth = 252;
constexpr int kCardWidth = 320;

int yearsBetween(Day birth, Day today)
{
    const CivilDate from = civilDate(birth);
    const CivilDate to = civilDate(today);
    const bool hadBirthday = std::pair(to.month, to.day) >= std::pair(from.month, from.day);
    return to.year - from.year - (hadBirthday ? 0 : 1);
}

QLabel* heading(const QString& text, QWidget* parent)
{
    auto* label = new QLabel(text, parent);
    QFont bold = label->font();
    bold.setBold(true);
    label->setFont(bold);
    return label;
}

} // namespace

MemberPage::MemberPage(Workspace& workspace, BackgroundReview& review, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_review(review)
    , m_back(new QPushButton(this))
    , m_name(new QLabel(this))
    , m_facts(new QLabel(this))
    , m_attendance(new AttendanceStrip(this))
    , m_reasons(new QListWidget(this))
    , m_sides(new QListWidget(this))
    , m_strength(new StrengthPanel(workspace, this))
    , m_sidesPanel(new MemberSidesPanel(this))
    , m_tests(new TestsPanel(this))
    , m_pictures(new QTabWidget(this))
    , m_sets(new SetsPanel(this))
    , m_target(new TargetCard(this))
    , m_setup(new SetupCardPanel(workspace, this))
    , m_pushUps(new PushUpPanel(workspace, this))
{
    nameParts();
    makeLayout();
    setBack(tr("People"));
    connect(m_back, &QPushButton::clicked, this, &MemberPage::left);
    connect(m_strength, &StrengthPanel::chosen, this, [this](ExerciseId exercise, Side side) {
        m_setup->show(m_history, m_library, exercise);
        m_target->show({&m_history, &m_library, exercise, side, m_workspace.clock.today()});
    });
    connect(m_sides, &QListWidget::itemActivated, this, [this] {
        m_pictures->setCurrentWidget(m_sidesPanel);
        m_sidesPanel->choose(m_sides->currentRow());
    });
    connect(&review, &BackgroundReview::ready, this, [this] { refresh(); });
}

void MemberPage::nameParts()
{
    setObjectName(QStringLiteral("memberPage"));
    setAccessibleName(tr("Person"));
    m_back->setObjectName(QStringLiteral("memberBack"));
    m_name->setObjectName(QStringLiteral("memberName"));
    m_facts->setObjectName(QStringLiteral("memberFacts"));
    m_reasons->setObjectName(QStringLiteral("memberReasons"));
    m_reasons->setAccessibleName(tr("Reasons to look"));
    m_sides->setObjectName(QStringLiteral("memberSides"));
    m_sides->setAccessibleName(tr("Left and right"));
    m_pictures->setObjectName(QStringLiteral("memberPictures"));
}

QWidget* MemberPage::makeFacts()
{
    auto* print = new QPushButton(tr("Print"), this);
    print->setObjectName(QStringLiteral("memberPrint"));
    print->setToolTip(tr("The person's page as a report (Ctrl+P)"));
    const auto wantPrint = [this] { Q_EMIT printWanted(m_member); };
    connect(print, &QPushButton::clicked, this, wantPrint);
    auto* shortcut = new QShortcut(QKeySequence::Print, this);
    shortcut->setContext(Qt::WidgetWithChildrenShortcut);
    connect(shortcut, &QShortcut::activated, this, wantPrint);
    auto* change = new QPushButton(tr("Change details (F2)"), this);
    change->setObjectName(QStringLiteral("memberChange"));
    connect(change, &QPushButton::clicked, this, &MemberPage::changePerson);
    auto* changeKey = new QShortcut(Qt::Key_F2, this);
    changeKey->setContext(Qt::WidgetWithChildrenShortcut);
    connect(changeKey, &QShortcut::activated, this, &MemberPage::changePerson);
    auto* ways = new QHBoxLayout;
    ways->addWidget(m_back);
    ways->addWidget(print);
    ways->addStretch(1);
    auto* facts = new QVBoxLayout;
    facts->addLayout(ways);
    facts->addWidget(m_name);
    facts->addWidget(m_facts);
    facts->addWidget(change, 0, Qt::AlignLeft);
    facts->addWidget(heading(tr("Seen in twelve weeks"), this));
    facts->addWidget(m_attendance);
    facts->addWidget(heading(tr("Look at"), this));
    facts->addWidget(m_reasons, 2);
    facts->addWidget(heading(tr("Left and right"), this));
    facts->addWidget(m_sides, 3);
    auto* side = new QWidget(this);
    side->setLayout(facts);
    side->setFixedWidth(kFactsWidth);
    facts->setContentsMargins(0, 0, 8, 0);
    return side;
}

void MemberPage::makeLayout()
{
    m_name->setTextFormat(Qt::PlainText);
    m_name->setWordWrap(true);
    m_facts->setWordWrap(true);
    m_facts->setTextFormat(Qt::PlainText);
    for (QListWidget* list : {m_reasons, m_sides}) {
        list->setWordWrap(true);
        list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    }
    auto* strength = new QSplitter(Qt::Horizontal, this);
    strength->addWidget(m_strength);
    auto* cards = new QWidget(this);
    auto* cardsLayout = new QVBoxLayout(cards);
    cardsLayout->setContentsMargins(0, 0, 0, 0);
    cardsLayout->addWidget(m_target, 1);
    cardsLayout->addWidget(m_setup);
    strength->addWidget(cards);
    strength->setChildrenCollapsible(false);
    strength->setStretchFactor(0, 3);
    strength->setStretchFactor(1, 1);
    strength->setSizes({600, kCardWidth});
    m_pictures->setDocumentMode(true);
    m_pictures->addTab(strength, tr("Strength"));
    m_pictures->addTab(m_sidesPanel, tr("Left and right"));
    m_pictures->addTab(m_tests, tr("Tests"));
    m_pictures->addTab(m_sets, tr("Sets"));
    m_pictures->addTab(m_pushUps, tr("Body weight"));
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 14, 16, 10);
    layout->addWidget(makeFacts());
    layout->addWidget(m_pictures, 1);
}

void MemberPage::setBack(const QString& place)
{
    m_back->setText(tr("Back to %1").arg(place));
}

void MemberPage::showSidesPicture()
{
    m_pictures->setCurrentWidget(m_sidesPanel);
}

void MemberPage::open(MemberId member, ExerciseId exercise)
{
    if (m_member != member) {
        m_sets->clearFilter();
        m_pictures->setCurrentIndex(0);
    }
    m_member = member;
    refresh();
    if (exercise.isStored()) {
        m_strength->choose(exercise);
    }
    m_strength->focusChoice();
}

const MemberReview* MemberPage::reviewOf(MemberId member) const
{
    const auto roster = m_review.current();
    if (!roster) {
        return nullptr;
    }
    const auto& members = roster->review.members;
    const auto found = std::find_if(members.begin(), members.end(), [&](const MemberReview& r) {
        return r.member.id == member;
    });
    return found == members.end() ? nullptr : &*found;
}

void MemberPage::refresh()
{
    if (!m_member.isStored()) {
        return;
    }
    perform(m_workspace.prompter, [&] {
        auto history = storage::historyOf(m_workspace.logbook, m_member, m_workspace.clock.today());
        if (!history) {
            Q_EMIT left(); // erased meanwhile
            return;
        }
        m_history = std::move(*history);
        m_library = storage::LibraryStore(m_workspace.logbook).all();
        const storage::GymStore gym(m_workspace.logbook);
        const EffortScale effort = gym.effortScale();
        m_sets->show(storage::SetStore(m_workspace.logbook).ofMember(m_member), m_library, effort);
        m_target->setGym(gym.kitOn(m_workspace.clock.today()), effort);
        const MemberReview* review = reviewOf(m_member);
        showFacts(m_history.member);
        showSides(review);
        const Day today = m_workspace.clock.today();
        m_attendance->show(seenDays(m_history, today), today);
        m_sidesPanel->show(m_history, m_review.current());
        m_tests->show(m_history, m_review.current());
        m_pushUps->show(m_history, m_library);
        m_strength->show(m_history, m_library, m_review.current(), effort);
    });
}

// A long name stays beside the chart.
void MemberPage::showName(const QString& name)
{
    constexpr qsizetype kLongName = 32;
    QFont large = font();
    large.setPointSizeF(large.pointSizeF() * (name.size() > kLongName ? 1.05 : 1.5));
    large.setBold(true);
    m_name->setFont(large);
    m_name->setText(name);
}

void MemberPage::showFacts(const Member& member)
{
    showName(member.name.empty() ? plain(member.code) : plain(member.name));
    QStringList lines = {tr("Id %1").arg(plain(member.code))};
    const auto add = [&lines](const QString& line) { lines << line; };
    if (member.birthDate) {
        add(tr("%n years", nullptr, yearsBetween(*member.birthDate, m_workspace.clock.today())));
    }
    if (member.statureTenthMillimetres) {
        add(tr("%1 cm tall").arg(plain(decimalText(*member.statureTenthMillimetres, 2))));
    }
    if (member.intakeMass) {
        add(tr("%1 kg at intake").arg(plain(member.intakeMass->number())));
    }
    if (member.dominantSide) {
        add(tr("Dominant side: %1").arg(word(sideWord(*member.dominantSide))));
    }
    if (member.experience) {
        add(tr("Experience: %1").arg(word(experienceWord(*member.experience))));
    }
    if (member.goal) {
        add(tr("Goal: %1").arg(word(goalWord(*member.goal))));
    }
    if (!member.group.empty()) {
        add(plain(member.group));
    }
    QStringList classes;
    for (const auto& groupClass : storage::ClassStore(m_workspace.logbook).classesOf(member.id)) {
        classes << plain(groupClass.name);
    }
    if (!classes.isEmpty()) {
        add(classes.join(QStringLiteral(", ")));
    }
    if (const auto habit = hardSetHabit(m_history, m_workspace.clock.today())) {
        add(words(hardSetsPhrase(*habit)));
    }
    const Day today = m_workspace.clock.today();
    const auto rated =
        storage::SessionStore(m_workspace.logbook).rated({today - kHabitDays, today}, member.id);
    if (const auto own = rated.find(member.id); own != rated.end()) {
        if (const auto habit = sessionLoadHabit(own->second, today)) {
            add(words(sessionLoadPhrase(*habit)));
        }
    }
    if (!member.note.empty()) {
        add(tr("Note: %1").arg(plain(member.note)));
    }
    m_facts->setText(lines.join(QLatin1Char('\n')));
}

void MemberPage::showSides(const MemberReview* review)
{
    m_reasons->clear();
    m_sides->clear();
    if (review == nullptr) {
        return;
    }
    for (const Attention& attention : review->attention) {
        m_reasons->addItem(words(attention));
    }
    for (const SlipQuestion& slip : review->slips) {
        m_reasons->addItem(words(phrases(slip)));
    }
    if (review->attention.empty() && review->slips.empty()) {
        m_reasons->addItem(tr("Nothing at the moment."));
    }
    for (const SideReview& side : review->sides) {
        m_sides->addItem(tr("%1: %2").arg(plain(side.measure.name), sideSentence(side)));
    }
    if (review->sides.empty()) {
        m_sides->addItem(tr("Not measured on both sides on one day in the last four months."));
    }
}

void MemberPage::changePerson()
{
    if (m_editor == nullptr) {
        m_editor = new PersonEditor(m_workspace, this);
        connect(m_editor, &PersonEditor::kept, this, &MemberPage::refresh);
    }
    perform(m_workspace.prompter, [this] { m_editor->start(m_member); });
}

void MemberPage::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape) {
        Q_EMIT left();
        return;
    }
    QWidget::keyPressEvent(event);
}

} // namespace levelbar::ui
