// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/plan/plan_page.h"

#include "core/plan/target_words.h"
#include "storage/class_plan_store.h"
#include "storage/session_store.h"
#include "storage/timetable_store.h"
#include "storage/whole_file.h"
#include "ui/perform.h"
#include "ui/plan/company_editor.h"
#include "ui/plan/plan_notes.h"
#include "ui/plan/week_editor.h"
#include "ui/words.h"

#include <QBuffer>
#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QListWidget>
#include <QLocale>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QPushButton>
#include <QShortcut>
#include <QSpinBox>
#include <QSplitter>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <ostream>

namespace levelbar::ui {

namespace {

using storage::Action;
using storage::ActionKind;
using storage::ClassPlanStore;

constexpr int kMostRacks = 40;
constexpr int kDotsPerInch = 1200;
constexpr double kMargin = 12.0; // mm

// "50 → 52.5 kg × 8" when the load is another one than last time.
QString targetText(const PlannedTarget& target, const PlanItem& item)
{
    const QString aim = aimText(target, item);
    if (!target.target) {
        return aim.isEmpty() ? PlanPage::tr("as last time") : aim;
    }
    const Progression& progression = target.target->progression;
    const auto load = target.load();
    const QString text = progression.last && load && exactWeight(*progression.last) != load->exact
                             ? PlanPage::tr("%1 → %2").arg(plain(progression.last->number()), aim)
                             : aim;
    return progression.decision == LoadDecision::Start ? PlanPage::tr("%1 (start)").arg(text)
                                                       : text;
}

QByteArray pdfOf(const MeetingSheet& sheet)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(kDotsPerInch);
    writer.setTitle(PlanPage::tr("Sheet %1").arg(sheet.number));
    writer.setCreator(QStringLiteral("Levelbar"));
    writer.setPageLayout(QPageLayout(QPageSize(QPageSize::A4),
                                     QPageLayout::Landscape,
                                     QMarginsF(kMargin, kMargin, kMargin, kMargin),
                                     QPageLayout::Millimeter));
    QPainter painter(&writer);
    paintPages(sheet, writer, painter);
    painter.end();
    return bytes;
}

} // namespace

PlanPage::PlanPage(Workspace& workspace, FileChooser choose, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_choose(std::move(choose))
    , m_class(new QComboBox(this))
    , m_next(new QLabel(this))
    , m_racks(new QSpinBox(this))
    , m_weeks(new WeekEditor(this))
    , m_targets(new QTableWidget(this))
    , m_notes(new QListWidget(this))
    , m_said(new QLabel(this))
{
    setObjectName(QStringLiteral("planPage"));
    setAccessibleName(tr("Plan"));
    m_class->setObjectName(QStringLiteral("planClass"));
    m_class->setAccessibleName(tr("Class"));
    m_next->setObjectName(QStringLiteral("planNext"));
    m_racks->setObjectName(QStringLiteral("planRacks"));
    m_racks->setAccessibleName(tr("Racks"));
    m_racks->setRange(1, kMostRacks);
    m_targets->setObjectName(QStringLiteral("planTargets"));
    m_targets->setAccessibleName(tr("Next loads"));
    m_targets->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_targets->setTabKeyNavigation(false);
    m_notes->setObjectName(QStringLiteral("planNotes"));
    m_notes->setAccessibleName(tr("Racks, minutes and kit"));
    m_notes->setWordWrap(true);
    m_said->setObjectName(QStringLiteral("planSaid"));
    m_said->setWordWrap(true);
    makeLayout();
    connectParts();
    setFocusProxy(m_class);
}

void PlanPage::makeLayout()
{
    auto* print = new QPushButton(tr("Sheet to &print …"), this);
    print->setObjectName(QStringLiteral("planPrint"));
    print->setToolTip(tr("Saves a PDF with a number, rack by rack (Ctrl+P)"));
    connect(print, &QPushButton::clicked, this, &PlanPage::printSheet);
    auto* racks = new QLabel(tr("&Racks"), this);
    racks->setBuddy(m_racks);
    auto* company = new QPushButton(tr("&Who with whom …"), this);
    company->setObjectName(QStringLiteral("planCompany"));
    company->setToolTip(tr("Who can spot, and who must not share a rack (Ctrl+R)"));
    connect(company, &QPushButton::clicked, this, &PlanPage::editCompany);
    auto* top = new QHBoxLayout;
    top->addWidget(m_class);
    top->addWidget(m_next, 1);
    top->addWidget(racks);
    top->addWidget(m_racks);
    top->addWidget(company);
    top->addWidget(print);
    auto* right = new QSplitter(Qt::Vertical, this);
    right->addWidget(m_targets);
    right->addWidget(m_notes);
    right->setStretchFactor(0, 3);
    right->setStretchFactor(1, 2);
    auto* parts = new QSplitter(this);
    parts->addWidget(m_weeks);
    parts->addWidget(right);
    parts->setStretchFactor(0, 4);
    parts->setStretchFactor(1, 5);
    parts->setChildrenCollapsible(false);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(16, 14, 16, 10);
    layout->addLayout(top);
    layout->addWidget(parts, 1);
    layout->addWidget(m_said);
}

void PlanPage::connectParts()
{
    connect(&m_workspace.notifier, &ChangeNotifier::changed, this, [this] {
        m_isStale = true;
        if (isVisible()) {
            perform(m_workspace.prompter, [this] { refresh(); });
        }
    });
    connect(m_class, &QComboBox::currentIndexChanged, this, [this] {
        perform(m_workspace.prompter, [this] { refresh(); });
    });
    connect(m_racks, &QSpinBox::valueChanged, this, &PlanPage::showNext);
    auto* print = new QShortcut(QKeySequence::Print, this);
    print->setContext(Qt::WidgetWithChildrenShortcut);
    connect(print, &QShortcut::activated, this, &PlanPage::printSheet);
    auto* company = new QShortcut(QKeySequence(Qt::CTRL | Qt::Key_R), this);
    company->setContext(Qt::WidgetWithChildrenShortcut);
    connect(company, &QShortcut::activated, this, &PlanPage::editCompany);
    connect(m_weeks,
            &WeekEditor::templateKept,
            this,
            [this](const std::vector<PlanItem>& items, const std::vector<PlanBlock>& blocks) {
                write(ActionKind::EditBlocks, tr("The template is kept."), [&](Action& action) {
                    ClassPlanStore::setItems(action, *chosen(), items);
                    ClassPlanStore::setBlocks(action, *chosen(), blocks);
                });
            });
    connect(m_weeks, &WeekEditor::weekKept, this, [this](const ClassWeek& week) {
        write(ActionKind::PlanWeek, tr("The week is kept."), [&](Action& action) {
            ClassPlanStore::setWeek(action, *chosen(), week);
        });
    });
    connect(m_weeks, &WeekEditor::weekRemoved, this, [this](Day monday) {
        write(ActionKind::PlanWeek, tr("The week follows the template."), [&](Action& action) {
            ClassPlanStore::removeWeek(action, *chosen(), monday);
        });
    });
}

void PlanPage::editCompany()
{
    if (m_company == nullptr) {
        m_company = new CompanyEditor(m_workspace, this);
    }
    perform(m_workspace.prompter, [this] { m_company->setPeople(m_plan.people); });
    m_company->show();
    m_company->setFocus(Qt::OtherFocusReason);
}

void PlanPage::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    if (m_isStale) {
        perform(m_workspace.prompter, [this] { refresh(); });
    }
}

std::optional<ClassId> PlanPage::chosen() const
{
    const auto index = static_cast<std::size_t>(m_class->currentIndex());
    return m_class->currentIndex() >= 0 && index < m_classes.size()
               ? std::optional(m_classes[index].id)
               : std::nullopt;
}

void PlanPage::refresh()
{
    auto classes = storage::ClassStore(m_workspace.logbook).all();
    if (classes != m_classes) {
        const QSignalBlocker blocker(m_class);
        const int index = std::max(0, m_class->currentIndex());
        m_classes = std::move(classes);
        m_class->clear();
        for (const storage::GroupClass& one : m_classes) {
            m_class->addItem(plain(one.name));
        }
        m_class->setCurrentIndex(std::min(index, m_class->count() - 1));
    }
    m_isStale = false;
    const auto groupClass = chosen();
    m_weeks->setEnabled(groupClass.has_value());
    if (!groupClass) {
        m_next->setText(tr("There is no class yet: add one on the Timetable page."));
        return;
    }
    const Day today = m_workspace.clock.today();
    m_plan = readClassPlan(m_workspace.logbook, *groupClass, today);
    m_weeks->show(m_plan, today);
    if (m_plan.racks != m_racksThere) {
        const QSignalBlocker blocker(m_racks); // what was typed stays until the gym changes
        m_racksThere = m_plan.racks;
        m_racks->setValue(m_plan.racks);
    }
    showNext();
}

void PlanPage::showNext()
{
    const Day today = m_workspace.clock.today();
    m_answer = planNext(m_plan, m_racks->value(), today);
    const auto people = static_cast<int>(m_plan.people.size());
    if (m_plan.next) {
        const MeetingKey& key = m_plan.next->key;
        m_next->setText(tr("Next: %1 %2, %3, %n people", nullptr, people)
                            .arg(QLocale().dayName(isoWeekday(key.day)),
                                 plain(shortText(key.day)),
                                 plain(text(key.start))));
    } else {
        m_next->setText(tr("Not in the timetable; shown for today, %n people", nullptr, people));
    }
    const std::vector<PlanItem> items = itemsIn(m_answer.book.day, m_plan.usual, m_plan.weeks);
    showTargets(items);
    showNotes();
}

void PlanPage::showTargets(const std::vector<PlanItem>& items)
{
    m_targets->clear();
    m_targets->setRowCount(static_cast<int>(m_plan.people.size()));
    m_targets->setColumnCount(static_cast<int>(items.size()));
    for (int column = 0; column < m_targets->columnCount(); ++column) {
        const PlanItem& item = items[static_cast<std::size_t>(column)];
        m_targets->setHorizontalHeaderItem(
            column, new QTableWidgetItem(exerciseName(m_plan.library, item.what.exercise)));
    }
    for (int row = 0; row < m_targets->rowCount(); ++row) {
        const Member& member = m_plan.people[static_cast<std::size_t>(row)].member;
        m_targets->setVerticalHeaderItem(row, new QTableWidgetItem(personName(member)));
    }
    for (std::size_t place = 0; place < m_answer.targets.size(); ++place) {
        const PlannedTarget& target = m_answer.targets[place];
        const auto row = static_cast<int>(place % m_plan.people.size());
        auto* item = new QTableWidgetItem(targetText(target, items[target.item]));
        item->setToolTip(target.target ? words(reasonPhrases(*target.target))
                                       : words(target.target.error()));
        const bool isOther =
            target.target && (target.target->progression.decision == LoadDecision::Raise ||
                              target.target->progression.decision == LoadDecision::Lower);
        QFont font = item->font();
        font.setBold(isOther);
        item->setFont(font);
        m_targets->setItem(row, static_cast<int>(target.item), item);
    }
    m_targets->resizeColumnsToContents();
}

void PlanPage::showNotes()
{
    m_notes->clear();
    m_notes->addItems(planNotes(m_plan, m_answer));
}

template <typename Work>
void PlanPage::write(ActionKind kind, const QString& sentence, const Work& work)
{
    if (!chosen()) {
        return;
    }
    perform(m_workspace.prompter, [&] {
        Action action(m_workspace.logbook, kind, m_workspace.clock.now());
        work(action);
        m_workspace.notifier.announce(action.commit());
        m_said->setText(sentence);
    });
}

// The number is given out first: what lies about on paper must be known even if saving fails.
void PlanPage::printSheet()
{
    if (!chosen() || !m_plan.next || m_plan.people.empty()) {
        m_said->setText(tr("Nothing to print: the class needs a next meeting with people in it."));
        return;
    }
    MeetingSheet sheet = sheetOf(m_plan, m_answer, m_class->currentText());
    const QString path =
        m_choose(this, tr("%1 %2.pdf").arg(m_class->currentText(), plain(isoText(sheet.day))));
    if (path.isEmpty()) {
        return;
    }
    const auto order = sheetOrder(m_plan, m_answer);
    const MeetingKey key = m_plan.next->key;
    write(ActionKind::PrintSheet, {}, [&](Action& action) {
        storage::PrintedSheet printed;
        printed.meeting = storage::TimetableStore::rowFor(action, key);
        printed.printedAt = m_workspace.clock.now();
        for (const auto& [member, station] : order) {
            printed.rows.push_back({member, station});
        }
        sheet.number = storage::SessionStore::add(action, printed).value;
    });
    if (sheet.number == 0) {
        return;
    }
    perform(m_workspace.prompter, [&] {
        const QByteArray bytes = pdfOf(sheet);
        storage::writeWholeFile(path.toStdString(),
                                [&](std::ostream& out) { out.write(bytes.data(), bytes.size()); });
        m_said->setText(tr("Sheet %1 is saved.").arg(sheet.number));
    });
}

} // namespace levelbar::ui
