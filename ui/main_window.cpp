// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window.h"

#include "storage/action.h"
#include "ui/floor/floor_page.h"
#include "ui/pages/member_page.h"
#include "ui/pages/roster_page.h"
#include "ui/pages/sides_page.h"
#include "ui/perform.h"
#include "ui/rail_icon.h"
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

QString actionWords(storage::ActionKind kind)
{
    switch (kind) {
    case storage::ActionKind::LogSet:
        return MainWindow::tr("a logged set");
    case storage::ActionKind::CorrectSet:
        return MainWindow::tr("a corrected set");
    case storage::ActionKind::MarkAttendance:
        return MainWindow::tr("who came");
    case storage::ActionKind::PlanMeeting:
        return MainWindow::tr("a planned load");
    case storage::ActionKind::EditTemplate:
        return MainWindow::tr("the exercises of a class");
    case storage::ActionKind::OpenMeeting:
        return MainWindow::tr("a new class");
    case storage::ActionKind::AddMember:
        return MainWindow::tr("a new person");
    case storage::ActionKind::EditMember:
        return MainWindow::tr("a person's details");
    case storage::ActionKind::TakeBack:
        break;
    }
    return MainWindow::tr("a change");
}

} // namespace

MainWindow::MainWindow(Workspace& workspace, QWidget* parent)
    : QMainWindow(parent)
    , m_workspace(workspace)
    , m_review(workspace.logbook, workspace.notifier, workspace.clock)
    , m_pages(new QStackedWidget(this))
    , m_rail(new QButtonGroup(this))
    , m_line(new QLabel(this))
    , m_roster(new RosterPage(workspace, m_review, this))
    , m_floor(new FloorPage(workspace, this))
    , m_sides(new SidesPage(m_review, this))
    , m_person(new MemberPage(workspace, m_review, this))
{
    setObjectName(QStringLiteral("mainWindow"));
    const QString file = QString::fromStdString(workspace.logbook.path().filename().string());
    setWindowTitle(file.isEmpty() ? tr("Levelbar") : tr("%1 – Levelbar").arg(file));
    for (QWidget* page : {static_cast<QWidget*>(m_roster),
                          static_cast<QWidget*>(m_floor),
                          static_cast<QWidget*>(m_sides),
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

    connect(m_roster, &RosterPage::opened, this, &MainWindow::openMember);
    connect(m_sides, &SidesPage::opened, this, &MainWindow::openMember);
    connect(m_person, &MemberPage::left, this, [this] { goTo(m_before); });
    connect(&m_review, &BackgroundReview::failed, this, &MainWindow::tell);
    auto* back = new QShortcut(QKeySequence::Undo, this);
    connect(back, &QShortcut::activated, this, &MainWindow::takeBackLast);
    auto* again = new QShortcut(QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), this);
    connect(again, &QShortcut::activated, this, &MainWindow::doAgain);
    auto* find = new QShortcut(QKeySequence::Find, this);
    connect(find, &QShortcut::activated, this, [this] {
        goTo(People);
        m_roster->focusFilter();
    });
    paintIcons();
    restoreWindow();
    goTo(People);
    m_review.request();
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
    addPlace(rail, People, tr("People"), Qt::Key_1);
    addPlace(rail, Floor, tr("Floor"), Qt::Key_2);
    addPlace(rail, Sides, tr("Sides"), Qt::Key_3);
    rail->addStretch(1);
    auto* back = new QToolButton(this);
    back->setObjectName(QStringLiteral("takeBackButton"));
    back->setText(tr("Take back"));
    back->setToolTip(tr("Takes back the last change (Ctrl+Z); Ctrl+Shift+Z does it again"));
    back->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    back->setMinimumHeight(40);
    rail->addWidget(back);
    connect(back, &QToolButton::clicked, this, &MainWindow::takeBackLast);
}

void MainWindow::addPlace(QVBoxLayout* rail, Page page, const QString& label, int key)
{
    auto* button = new QToolButton(this);
    button->setObjectName(QStringLiteral("rail%1").arg(static_cast<int>(page)));
    button->setAccessibleName(label);
    button->setText(label);
    button->setToolButtonStyle(Qt::ToolButtonTextUnderIcon);
    button->setIconSize(QSize(30, 30));
    button->setCheckable(true);
    button->setAutoRaise(true);
    button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    button->setMinimumHeight(68);
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
    m_rail->button(People)->setIcon(railIcon(RailIcon::People, ink));
    m_rail->button(Floor)->setIcon(railIcon(RailIcon::Floor, ink));
    m_rail->button(Sides)->setIcon(railIcon(RailIcon::Sides, ink));
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

void MainWindow::openMember(MemberId member)
{
    if (page() != Person) {
        m_before = page();
    }
    goTo(Person);
    m_person->open(member);
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
