// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/logbook_fixture.h"
#include "tests/support/scripted_prompter.h"
#include "ui/charts/strength_chart.h"
#include "ui/main_window.h"

#include <QApplication>
#include <QListView>
#include <QPushButton>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace levelbar::ui::person_journey_test {
namespace {

using tests::benchSet;
using tests::kNow;
using tests::logSet;

const Day kToday{20600};

TEST(PersonJourneyTest, FromTodaysFirstLineToChartAndReportByKeysAlone)
{
    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    const MemberId member = tests::addMember(logbook, "M1", "Ann Levelhead");
    for (int week = 0; week < 6; ++week) {
        DoneSet set = benchSet(logbook, member, kToday - 3 - 7 * week, 1, 8);
        set.performed.reserve = Reserve{20};
        set.performed.pain = week == 0 ? std::optional<int>(5) : std::nullopt;
        logSet(logbook, set);
    }
    testing::StrictMock<ScriptedPrompter> prompter;
    ChangeNotifier notifier;
    Workspace workspace{logbook, notifier, {[] { return kNow; }, [] { return kToday; }}, prompter};
    MainWindow window(workspace);
    window.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window)); // keys go to the active window
    ASSERT_TRUE(QTest::qWaitFor([&] { return window.review().current() != nullptr; }, 20'000));
    // As many presses of the Tab key as there may be widgets on the way.
    const auto tabTo = [](const char* name) {
        for (int press = 0; press < 60; ++press) {
            QWidget* focus = QApplication::focusWidget();
            if (focus != nullptr && focus->objectName() == QLatin1String(name)) {
                return true;
            }
            QTest::keyClick(focus, Qt::Key_Tab);
        }
        return false;
    };

    ASSERT_TRUE(tabTo("todayLines"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    ASSERT_EQ(window.page(), MainWindow::Person);
    EXPECT_EQ(window.findChild<QPushButton*>(QStringLiteral("memberBack"))->text(),
              QStringLiteral("Back to Today"));
    ASSERT_TRUE(tabTo("strengthChartView"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Left);
    EXPECT_TRUE(window.findChild<StrengthChart*>()->readOut().contains(QStringLiteral("pain 5")))
        << window.findChild<StrengthChart*>()->readOut().toStdString();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_P, Qt::ControlModifier);
    EXPECT_EQ(window.page(), MainWindow::Reports);
    QTest::keyClick(&window, Qt::Key_2, Qt::ControlModifier);
    window.openMember(member);
    EXPECT_EQ(window.findChild<QPushButton*>(QStringLiteral("memberBack"))->text(),
              QStringLiteral("Back to People"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    EXPECT_EQ(window.page(), MainWindow::People);
}

} // namespace
} // namespace levelbar::ui::person_journey_test
