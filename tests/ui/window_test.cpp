// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/logbook_fixture.h"
#include "tests/support/scripted_prompter.h"
#include "ui/main_window.h"
#include "ui/theme.h"

#include <QAbstractButton>
#include <QLabel>
#include <QSignalSpy>
#include <QStackedWidget>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace levelbar::ui::window_test {
namespace {

using tests::benchSet;
using tests::kNow;
using tests::logSet;

const Day kToday{20600};

class WindowTest : public testing::Test {
protected:
    Workspace workspaceOf(storage::Logbook& logbook)
    {
        return {logbook, notifier, {[] { return kNow; }, [] { return kToday; }}, prompter};
    }

    testing::StrictMock<ScriptedPrompter> prompter;
    ChangeNotifier notifier;
};

TEST_F(WindowTest, PagesAreReachedByKey)
{
    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    Workspace workspace = workspaceOf(logbook);
    MainWindow window(workspace);
    window.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window)); // shortcuts belong to the active window
    for (const auto& [key, page] : {std::pair(Qt::Key_2, MainWindow::People),
                                    std::pair(Qt::Key_3, MainWindow::Timetable),
                                    std::pair(Qt::Key_4, MainWindow::Floor),
                                    std::pair(Qt::Key_5, MainWindow::Plan),
                                    std::pair(Qt::Key_6, MainWindow::Sides),
                                    std::pair(Qt::Key_7, MainWindow::Exercises),
                                    std::pair(Qt::Key_8, MainWindow::Gym),
                                    std::pair(Qt::Key_9, MainWindow::Reports),
                                    std::pair(Qt::Key_1, MainWindow::Today)}) {
        QTest::keyClick(&window, key, Qt::ControlModifier);
        EXPECT_EQ(window.page(), page);
    }
    for (const QAbstractButton* button : window.findChildren<QAbstractButton*>()) {
        if (button->objectName().startsWith(QStringLiteral("rail"))) {
            EXPECT_FALSE(button->accessibleName().isEmpty());
        }
    }
}

TEST_F(WindowTest, FitsASmallScreen)
{
    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    applyTheme(*qApp, ThemeChoice::Light); // its edges are wider than a bare style's
    Workspace workspace = workspaceOf(logbook);
    MainWindow window(workspace);
    window.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    for (const QWidget* page : window.findChild<QStackedWidget*>()->findChildren<QWidget*>(
             QString(), Qt::FindDirectChildrenOnly)) {
        EXPECT_LE(page->minimumSizeHint().width() + 104, 1366) << page->objectName().toStdString();
    }
    const QSize least = window.minimumSizeHint();
    EXPECT_LE(least.width(), 1366);
    EXPECT_LE(least.height(), 768);
}

TEST_F(WindowTest, TakesBackAndDoesAgainAndSaysWhat)
{
    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    const MemberId member = tests::addMember(logbook, "M1");
    logSet(logbook, benchSet(logbook, member, kToday, 1, 8));
    Workspace workspace = workspaceOf(logbook);
    MainWindow window(workspace);
    QSignalSpy changed(&notifier, &ChangeNotifier::changed);
    window.takeBackLast();
    EXPECT_TRUE(storage::SetStore(logbook).ofMember(member).empty());
    EXPECT_EQ(changed.count(), 1);
    const auto* line = window.findChild<QLabel*>(QStringLiteral("windowLine"));
    EXPECT_EQ(line->text(), QStringLiteral("Taken back: a logged set."));
    window.doAgain();
    EXPECT_EQ(storage::SetStore(logbook).ofMember(member).size(), 1U);
    EXPECT_EQ(line->text(), QStringLiteral("Done again: a logged set."));
    window.doAgain();
    EXPECT_EQ(line->text(), QStringLiteral("There is nothing to do again."));
}

TEST_F(WindowTest, TheReviewOfAFileFollowsEveryCommitAndTheFileEndsAsOne)
{
    const tests::TemporaryFolder folder;
    {
        storage::Logbook logbook = storage::Logbook::create(folder / "g.levelbar", kNow);
        const MemberId member = tests::addMember(logbook, "M1");
        Workspace workspace = workspaceOf(logbook);
        MainWindow window(workspace);
        QSignalSpy ready(&window.review(), &BackgroundReview::ready);
        ASSERT_TRUE(ready.wait(20'000));
        EXPECT_FALSE(window.review().current()->review.members.at(0).lastSeen);
        for (int number = 1; number <= 5; ++number) { // a burst is one review, the newest
            notifier.announce(logSet(logbook, benchSet(logbook, member, kToday, number, 8)));
        }
        ASSERT_TRUE(QTest::qWaitFor(
            [&] { return window.review().current()->review.members.at(0).lastSeen.has_value(); },
            20'000));
        EXPECT_EQ(window.review().current()->review.members.at(0).lastSeen, kToday);
    }
    int files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder.path())) {
        static_cast<void>(entry);
        ++files;
    }
    EXPECT_EQ(files, 1);
}

} // namespace
} // namespace levelbar::ui::window_test
