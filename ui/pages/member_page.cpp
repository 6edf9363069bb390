// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/member_page.h"

#include "core/base/number.h"
#include "storage/class_store.h"
#include "storage/history_reader.h"
#include "storage/library_store.h"
#include "storage/set_store.h"
#include "ui/change_notifier.h"
#include "ui/charts/strength_chart.h"
#include "ui/pages/sets_model.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSplitter>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kFactsWidth = 300;
constexpr int kExerciseRole = Qt::UserRole + 1;
constexpr int kSideRole = Qt::UserRole + 2;

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
    , m_name(new QLabel(this))
    , m_facts(new QLabel(this))
    , m_reasons(new QListWidget(this))
    , m_sides(new QListWidget(this))
    , m_exercise(new QComboBox(this))
    , m_strengthWords(new QLabel(this))
    , m_chart(new StrengthChart(this))
    , m_sets(new SetsModel(this))
    , m_table(new QTableView(this))
{
    setObjectName(QStringLiteral("memberPage"));
    setAccessibleName(tr("Person"));
    m_name->setObjectName(QStringLiteral("memberName"));
    m_facts->setObjectName(QStringLiteral("memberFacts"));
    m_reasons->setObjectName(QStringLiteral("memberReasons"));
    m_reasons->setAccessibleName(tr("Reasons to look"));
    m_sides->setObjectName(QStringLiteral("memberSides"));
    m_sides->setAccessibleName(tr("Left and right"));
    m_exercise->setObjectName(QStringLiteral("memberExercise"));
    m_exercise->setAccessibleName(tr("Exercise and side"));
    m_strengthWords->setObjectName(QStringLiteral("memberStrengthWords"));
    m_table->setObjectName(QStringLiteral("memberSets"));
    m_table->setAccessibleName(tr("Sets, newest first"));
    makeLayout();
    connect(m_exercise, &QComboBox::currentIndexChanged, this, &MemberPage::showExercise);
    connect(&review, &BackgroundReview::ready, this, [this] { refresh(); });
}

void MemberPage::makeLayout()
{
    QFont large = m_name->font();
    large.setPointSizeF(large.pointSizeF() * 1.5);
    large.setBold(true);
    m_name->setFont(large);
    m_name->setWordWrap(true);
    m_facts->setWordWrap(true);
    m_facts->setTextFormat(Qt::PlainText);
    m_strengthWords->setWordWrap(true);
    m_strengthWords->setTextFormat(Qt::PlainText);
    for (QListWidget* list : {m_reasons, m_sides}) {
        list->setWordWrap(true);
        list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    }
    m_exercise->setMinimumWidth(340);
    m_table->setModel(m_sets);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setAlternatingRowColors(true);
    m_table->setShowGrid(false);
    m_table->setTabKeyNavigation(false);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(m_table->fontMetrics().height() + 8);
    m_table->horizontalHeader()->setStretchLastSection(true);

    auto* back = new QPushButton(tr("Back to People"), this);
    back->setObjectName(QStringLiteral("memberBack"));
    connect(back, &QPushButton::clicked, this, &MemberPage::left);
    auto* facts = new QVBoxLayout;
    facts->addWidget(back, 0, Qt::AlignLeft);
    facts->addWidget(m_name);
    facts->addWidget(m_facts);
    facts->addWidget(heading(tr("Look at"), this));
    facts->addWidget(m_reasons, 2);
    facts->addWidget(heading(tr("Left and right"), this));
    facts->addWidget(m_sides, 3);
    auto* side = new QWidget(this);
    side->setLayout(facts);
    side->setFixedWidth(kFactsWidth);
    facts->setContentsMargins(0, 0, 8, 0);

    auto* strength = new QWidget(this);
    auto* strengthLayout = new QVBoxLayout(strength);
    strengthLayout->setContentsMargins(0, 0, 0, 0);
    strengthLayout->addWidget(m_exercise, 0, Qt::AlignLeft);
    strengthLayout->addWidget(m_strengthWords);
    strengthLayout->addWidget(m_chart, 1);
    auto* halves = new QSplitter(Qt::Vertical, this);
    halves->addWidget(strength);
    halves->addWidget(m_table);
    halves->setStretchFactor(0, 3);
    halves->setStretchFactor(1, 1);
    halves->setChildrenCollapsible(false);
    halves->setSizes({520, 190});
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 14, 16, 10);
    layout->addWidget(side);
    layout->addWidget(halves, 1);
}

void MemberPage::open(MemberId member)
{
    m_member = member;
    refresh();
    m_exercise->setFocus(Qt::OtherFocusReason);
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
        auto history = storage::historyOf(m_workspace.logbook, m_member);
        if (!history) {
            Q_EMIT left(); // erased meanwhile
            return;
        }
        m_history = std::move(*history);
        m_library = storage::LibraryStore(m_workspace.logbook).all();
        m_sets->show(storage::SetStore(m_workspace.logbook).ofMember(m_member), m_library);
        m_table->resizeColumnsToContents();
        const MemberReview* review = reviewOf(m_member);
        showFacts(m_history.member);
        showSides(review);
        fillExercises(review);
        showExercise();
    });
}

void MemberPage::showFacts(const Member& member)
{
    m_name->setText(member.name.empty() ? plain(member.code) : plain(member.name));
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
    if (review->attention.empty()) {
        m_reasons->addItem(tr("Nothing at the moment."));
    }
    for (const SideReview& side : review->sides) {
        m_sides->addItem(tr("%1: %2").arg(plain(side.measure.name), words(phrases(side))));
    }
    if (review->sides.empty()) {
        m_sides->addItem(tr("Not measured on both sides on one day yet."));
    }
}

void MemberPage::fillExercises(const MemberReview* review)
{
    const QVariant exercise = m_exercise->currentData(kExerciseRole);
    const QVariant side = m_exercise->currentData(kSideRole);
    const QSignalBlocker blocker(m_exercise);
    m_exercise->clear();
    if (review == nullptr) {
        return;
    }
    const StrengthReview* main = mainStrength(*review);
    int wanted = 0;
    bool isKept = false;
    for (const StrengthReview& entry : review->strength) {
        const Exercise* known = m_library.exercise(entry.exercise);
        QString label = plain(known->name);
        if (entry.side != Side::Both) {
            label = tr("%1, %2").arg(label, word(sideWord(entry.side)));
        }
        const int row = m_exercise->count();
        m_exercise->addItem(label);
        m_exercise->setItemData(row, static_cast<qlonglong>(entry.exercise.value), kExerciseRole);
        m_exercise->setItemData(row, static_cast<int>(entry.side), kSideRole);
        const bool isSame = exercise == m_exercise->itemData(row, kExerciseRole) &&
                            side == m_exercise->itemData(row, kSideRole);
        if (isSame || (!isKept && &entry == main)) {
            wanted = row;
            isKept = isKept || isSame;
        }
    }
    m_exercise->setCurrentIndex(wanted);
}

void MemberPage::showExercise()
{
    const Day today = m_workspace.clock.today();
    const MemberReview* review = reviewOf(m_member);
    const ExerciseId exercise{m_exercise->currentData(kExerciseRole).toLongLong()};
    const auto side = static_cast<Side>(m_exercise->currentData(kSideRole).toInt());
    QString text = tr("No strength can be read off the sets yet.");
    if (review != nullptr) {
        for (const StrengthReview& entry : review->strength) {
            if (entry.exercise == exercise && entry.side == side) {
                text = words(phrases(entry.strength, today)) + QLatin1Char('\n') +
                       words(phrases(entry.trend));
            }
        }
    }
    m_strengthWords->setText(text);
    m_chart->show(strengthFigure(m_history, m_library, exercise, side, today), today);
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
