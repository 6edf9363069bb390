// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window.h"

#include "storage/action.h"
#include "ui/action_words.h"
#include "ui/emergency/emergency_window.h"
#include "ui/exercises/exercise_page.h"
#include "ui/floor/floor_page.h"
#include "ui/gym/gym_page.h"
#include "ui/pages/member_page.h"
#include "ui/pages/roster_page.h"
#include "ui/pages/sides_page.h"
#include "ui/perform.h"
#include "ui/plan/plan_page.h"
#include "ui/rail_icon.h"
#include "ui/report/report_page.h"
#include "ui/timetable/timetable_page.h"
#include "ui/today/today_page.h"
#include "ui/words.h"

#include <QButtonGroup>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QSettings>
#include <QShortcut>
#include <QStackedWidget>
#include <QStatusBar>
#include <QToolButton>
#include <QVBoxLayout>

namespace levelbar::ui {

namespace {

constexpr int kRailWidth = 104;
constexpr const char* kGeometrySetting = "window/geometry";

} // namespace

MainWindow::MainWindow(Workspace& workspace, QWidget* parent)
    : QMainWindow(parent)
    , m_workspace(workspace)
    , m_review(workspace.logbook, workspace.notifier, workspace.clock)
    , m_pages(new QStackedWidget(this))
    , m_rail(new QButtonGroup(this))
    , m_line(new QLabel(this))
    , m_today(new TodayPage(workspace, m_review, this))
    , m_roster(new RosterPage(workspace, m_review, this))
    , m_floor(new FloorPage(workspace, this))
    , m_sides(new SidesPage(workspace, m_review, this))
    , m_exercises(new ExercisePage(workspace, this))
    , m_gym(new GymPage(workspace, this))
    , m_reports(new ReportPage(workspace, m_review, this))
    , m_timetable(new TimetablePage(workspace, this))
    , m_plan(new PlanPage(workspace, &chooseFileToSave, this))
    , m_person(new MemberPage(workspace, m_review, this))
    , m_emergency(new EmergencyWindow(workspace, &chooseFileToSave, this))
{
    setObjectName(QStringLiteral("mainWindow"));
    const QString file = QString::fromStdString(workspace.logbook.path().filename().string());
    setWindowTitle(file.isEmpty() ? tr("Levelbar") : tr("%1 – Levelbar").arg(file));
    for (QWidget* page : {static_cast<QWidget*>(m_today),
                          static_cast<QWidget*>(m_roster),
                          static_cast<QWidget*>(m_timetable),
                          static_cast<QWidget*>(m_floor),
                          static_cast<QWidget*>(m_plan),
                          static_cast<QWidget*>(m_sides),
                          static_cast<QWidget*>(m_exercises),
                          static_cast<QWidget*>(m_gym),
                          static_cast<QWidget*>(m_reports),
                          static_cast<QWidget*>(m_person)}) {
        m_pages->addWidget(page);
    }
    auto* rail = new QVBoxLayout;
    makeRail(rail);
    auto* strip = new QWidget(this);
    strip->setObjectName(QStringLiteral("rail"));
    strip->setAccessibleName(tr("Pages"));
    strip->setFixedWidth(kRailWidth);
    strip->setLayout(rail);
    auto* centre = new QWidget(this);
    auto* layout = new QHBoxLayout(centre);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(strip);
    layout->addWidget(m_pages, 1);
    setCentralWidget(centre);
    m_line->setObjectName(QStringLiteral("windowLine"));
    statusBar()->addWidget(m_line, 1);
    statusBar()->setSizeGripEnabled(false);

    connectPages();
    makeShortcuts();
    paintIcons();
    restoreWindow();
    goTo(Today);
    m_review.request();
}

void MainWindow::connectPages()
{
    connect(m_today, &TodayPage::opened, this, &MainWindow::openMember);
    connect(m_roster, &RosterPage::opened, this, [this](MemberId member) { openMember(member); });
    connect(m_sides, &SidesPage::opened, this, [this](MemberId member) {
        openMember(member);
        m_person->showSidesPicture();
    });
    connect(m_person, &MemberPage::left, this, [this] { goTo(m_before); });
    connect(&m_review, &BackgroundReview::ready, m_floor, &FloorPage::setRoster);
    connect(m_person, &MemberPage::printWanted, this, [this](MemberId member) {
        goTo(Reports);
        m_reports->openPerson(member);
    });
    connect(&m_review, &BackgroundReview::failed, this, &MainWindow::tell);
}

void MainWindow::makeShortcuts()
{
    auto* back = new QShortcut(QKeySequence::Undo, this);
    connect(back, &QShortcut::activated, this, &MainWindow::takeBackLast);
    auto* again = new QShortcut(QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), this);
    connect(again, &QShortcut::activated, this, &MainWindow::doAgain);
    auto* find = new QShortcut(QKeySequence::Find, this);
    connect(find, &QShortcut::activated, this, [this] {
        goTo(People);
        m_roster->focusFilter();
    });
    // From every window of the program, the wall's too.
    auto* emergency = new QShortcut(QKeySequence(Qt::Key_F12), this);
    emergency->setContext(Qt::ApplicationShortcut);
    connect(emergency, &QShortcut::activated, this, &MainWindow::openEmergency);
}

MainWindow::~MainWindow()
{
    QSettings().setValue(QLatin1String(kGeometrySetting), saveGeometry());
}

void MainWindow::makeRail(QVBoxLayout* rail)
{
    rail->setContentsMargins(6, 14, 6, 6);
    rail->setSpacing(6);
    m_rail->setExclusive(true);
    addPlace(rail, Today, tr("Today"), Qt::Key_1);
    addPlace(rail, People, tr("People"), Qt::Key_2);
    addPlace(rail, Timetable, tr("Timetable"), Qt::Key_3);
    addPlace(rail, Floor, tr("Floor"), Qt::Key_4);
    addPlace(rail, Plan, tr("Plan"), Qt::Key_5);
    addPlace(rail, Sides, tr("Sides"), Qt::Key_6);
    addPlace(rail, Exercises, tr("Exercises"), Qt::Key_7);
    addPlace(rail, Gym, tr("Gym"), Qt::Key_8);
    addPlace(rail, Reports, tr("Reports"), Qt::Key_9);
    rail->addStretch(1);
    QToolButton* emergency = addButton(rail, "emergencyButton", tr("Emergency"));
    emergency->setToolTip(tr("What to say on the telephone, and whom to call (F12)"));
    connect(emergency, &QToolButton::clicked, this, &MainWindow::openEmergency);
    QToolButton* back = addButton(rail, "takeBackButton", tr("Take back"));
    back->setToolTip(tr("Takes back the last change (Ctrl+Z); Ctrl+Shift+Z does it again"));
    connect(back, &QToolButton::clicked, this, &MainWindow::takeBackLast);
}

QToolButton* MainWindow::addButton(QVBoxLayout* rail, const char* name, const QString& label)
{
    auto* button = new QToolButton(this);
    button->setObjectName(QLatin1String(name));
    button->setText(label);
    button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    button->setMinimumHeight(34);
    rail->addWidget(button);
    return button;
}

void MainWindow::addPlace(QVBoxLayout* rail, Page page, const QString& label, int key)
{
    auto* button = new QToolButton(this);
    button->setObjectName(QStringLiteral("rail%1").arg(static_cast<int>(page)));
    button->setAccessibleName(label);
    button->setText(label);
    button->setToolButtonStyle(Qt::ToolButtonTextUnderIcon);
    button->setIconSize(QSize(28, 28));
    button->setCheckable(true);
    button->setAutoRaise(true);
    button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    button->setMinimumHeight(62); // nine of them and two buttons fit a height of 768
    button->setToolTip(tr("%1 (Ctrl+%2)").arg(label).arg(QChar(key)));
    m_rail->addButton(button, page);
    rail->addWidget(button);
    connect(button, &QToolButton::clicked, this, [this, page] { goTo(page); });
    auto* shortcut = new QShortcut(QKeySequence(Qt::CTRL | static_cast<Qt::Key>(key)), this);
    connect(shortcut, &QShortcut::activated, this, [this, page] { goTo(page); });
}

void MainWindow::paintIcons()
{
    const QColor ink = palette().color(QPalette::ButtonText);
    m_rail->button(Today)->setIcon(railIcon(RailIcon::Today, ink));
    m_rail->button(People)->setIcon(railIcon(RailIcon::People, ink));
    m_rail->button(Floor)->setIcon(railIcon(RailIcon::Floor, ink));
    m_rail->button(Sides)->setIcon(railIcon(RailIcon::Sides, ink));
    m_rail->button(Exercises)->setIcon(railIcon(RailIcon::Exercises, ink));
    m_rail->button(Gym)->setIcon(railIcon(RailIcon::Gym, ink));
    m_rail->button(Timetable)->setIcon(railIcon(RailIcon::Timetable, ink));
    m_rail->button(Plan)->setIcon(railIcon(RailIcon::Plan, ink));
    m_rail->button(Reports)->setIcon(railIcon(RailIcon::Reports, ink));
}

void MainWindow::restoreWindow()
{
    resize(1366, 768);
    const QByteArray geometry = QSettings().value(QLatin1String(kGeometrySetting)).toByteArray();
    if (!geometry.isEmpty()) {
        restoreGeometry(geometry);
    }
}

MainWindow::Page MainWindow::page() const
{
    return static_cast<Page>(m_pages->currentIndex());
}

void MainWindow::goTo(Page page)
{
    m_pages->setCurrentIndex(page);
    if (QAbstractButton* button = m_rail->button(page == Person ? m_before : page)) {
        button->setChecked(true);
    }
    m_pages->currentWidget()->setFocus(Qt::OtherFocusReason);
}

void MainWindow::openMember(MemberId member, ExerciseId exercise)
{
    if (page() != Person) {
        m_before = page();
    }
    goTo(Person);
    m_person->setBack(m_rail->button(m_before)->text());
    m_person->open(member, exercise);
}

void MainWindow::reverse(ActionId action, const QString& verb)
{
    perform(m_workspace.prompter, [&] {
        QString what;
        for (const auto& entry : storage::recentActions(m_workspace.logbook, 1000)) {
            if (entry.id == action) {
                what = actionWords(entry.kind);
                // Again: name what the taking back had undone.
                for (const auto& other : storage::recentActions(m_workspace.logbook, 1000)) {
                    if (entry.reverses == other.id) {
                        what = actionWords(other.kind);
                    }
                }
            }
        }
        const storage::Change change =
            storage::takeBack(m_workspace.logbook, action, m_workspace.clock.now());
        m_workspace.notifier.announce(change);
        tell(verb.arg(what));
    });
}

void MainWindow::takeBackLast()
{
    perform(m_workspace.prompter, [&] {
        const auto last = storage::lastTakeable(m_workspace.logbook);
        if (last) {
            reverse(*last, tr("Taken back: %1."));
        } else {
            tell(tr("There is nothing to take back."));
        }
    });
}

void MainWindow::doAgain()
{
    perform(m_workspace.prompter, [&] {
        const auto last = storage::lastTakenBack(m_workspace.logbook);
        if (last) {
            reverse(*last, tr("Done again: %1."));
        } else {
            tell(tr("There is nothing to do again."));
        }
    });
}

void MainWindow::openEmergency()
{
    m_emergency->open(page() == Person  ? m_person->member()
                      : page() == Floor ? m_floor->memberUnderCursor()
                                        : MemberId{});
}

void MainWindow::tell(const QString& sentence)
{
    m_line->setText(sentence);
}

void MainWindow::changeEvent(QEvent* event)
{
    QMainWindow::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        paintIcons();
    }
}

} // namespace levelbar::ui
