// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/timetable_store.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/scripted_prompter.h"
#include "ui/timetable/timetable_page.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTableWidget>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace levelbar::ui::timetable_page_test {
namespace {

using storage::TimetableStore;
using tests::kNow;

const Day kToday{20600}; // a Wednesday

class TimetablePageTest : public testing::Test {
protected:
    void SetUp() override
    {
        {
            storage::Action action(logbook, storage::ActionKind::EditTimetable, kNow);
            evening = storage::ClassStore::add(action, "Evening bars");
            WeeklySlot slot;
            slot.groupClass = evening;
            slot.weekday = 3;
            slot.start = TimeOfDay{18 * 60};
            slot.plan = {60, "Hall", "AB", 1};
            TimetableStore::add(action, slot);
            action.commit();
        }
        mara = tests::addMember(logbook, "M1", "Mara Linden");
        noor = tests::addMember(logbook, "M2", "Noor Ashby");
        page.resize(1200, 700);
        page.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&page));
    }

    template <typename T> T& part(const char* name)
    {
        auto* found = page.findChild<T*>(QLatin1String(name));
        EXPECT_NE(found, nullptr) << name;
        return *found;
    }

    QString cell(int row, int column)
    {
        const QTableWidgetItem* item = part<QTableWidget>("weekGrid").item(row, column);
        return item == nullptr ? QString() : item->text();
    }

    void type(const char* name, const QString& text)
    {
        part<QLineEdit>(name).setText(text);
        QTest::keyClick(&part<QLineEdit>(name), Qt::Key_Return);
    }

    void bookPerson(const QString& name)
    {
        part<QComboBox>("meetingPerson").setCurrentText(name);
        QTest::keyClick(part<QComboBox>("meetingPerson").lineEdit(), Qt::Key_Return);
    }

    [[nodiscard]] MeetingPlaces places()
    {
        const MeetingKey key{kToday, TimeOfDay{18 * 60}, evening};
        return storage::BookingStore(logbook).placesOf(
            evening, TimetableStore(logbook).rowOf(key), 1);
    }

    void takeBack()
    {
        notifier.announce(storage::takeBack(logbook, storage::lastTakeable(logbook).value(), kNow));
    }

    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    testing::StrictMock<ScriptedPrompter> prompter;
    ChangeNotifier notifier;
    Workspace workspace{logbook, notifier, {[] { return kNow; }, [] { return kToday; }}, prompter};
    TimetablePage page{workspace};
    ClassId evening;
    MemberId mara;
    MemberId noor;
};

TEST_F(TimetablePageTest, ShowsTheWeeksClassesWhereTheyLie)
{
    EXPECT_EQ(cell(0, 2), QStringLiteral("Evening bars\nHall · AB\n0 of 1"));
    EXPECT_EQ(cell(0, 1), QString());
    EXPECT_TRUE(part<QLabel>("meetingTitle").text().startsWith(QStringLiteral("Evening bars")));
}

TEST_F(TimetablePageTest, WhoComesTooLateWaitsAndMovesUp)
{
    bookPerson(QStringLiteral("Mara Linden (M1)"));
    bookPerson(QStringLiteral("Noor Ashby (M2)"));
    EXPECT_EQ(places().booked, std::vector{mara});
    EXPECT_EQ(places().waiting, std::vector{noor});
    EXPECT_TRUE(cell(0, 2).endsWith(QStringLiteral("1 of 1, 1 waiting")));
    auto& list = part<QListWidget>("meetingPlaces");
    list.setCurrentRow(0);
    part<QPushButton>("meetingGiveBack").click();
    EXPECT_EQ(places().booked, std::vector{noor});
    EXPECT_TRUE(part<QLabel>("timetableSaid").text().contains(QStringLiteral("Moved up")));
    takeBack();
    EXPECT_EQ(places().booked, std::vector{mara});
    EXPECT_TRUE(cell(0, 2).endsWith(QStringLiteral("1 of 1, 1 waiting")));
}

TEST_F(TimetablePageTest, AMeetingIsCancelledOnlyWithAReason)
{
    part<QPushButton>("meetingCancel").click();
    EXPECT_FALSE(part<QLabel>("meetingSaid").text().isEmpty());
    EXPECT_TRUE(cell(0, 2).endsWith(QStringLiteral("0 of 1")));
    type("meetingReason", QStringLiteral("Water in the hall"));
    EXPECT_EQ(cell(0, 2), QStringLiteral("Evening bars\nCancelled: Water in the hall"));
    part<QPushButton>("meetingCancel").click();
    EXPECT_TRUE(cell(0, 2).endsWith(QStringLiteral("0 of 1"))) << "it takes place after all";
}

TEST_F(TimetablePageTest, ARoomAndACoverAreOfThisMeetingOnly)
{
    type("meetingRoom", QStringLiteral("Yard"));
    type("meetingInstructor", QStringLiteral("CD"));
    EXPECT_EQ(cell(0, 2), QStringLiteral("Evening bars\nmoved to Yard · CD covers\n0 of 1"));
    part<QPushButton>("weekAfter").click();
    EXPECT_EQ(cell(0, 2), QStringLiteral("Evening bars\nHall · AB\n0 of 1"));
}

TEST_F(TimetablePageTest, ANewClassComesIntoTheWeekAndOutAgain)
{
    part<QPushButton>("weekAddSlot").click();
    part<QComboBox>("hourClass").setCurrentText(QStringLiteral("Morning"));
    part<QComboBox>("hourWeekday").setCurrentIndex(4);
    type("hourStart", QStringLiteral("7"));
    EXPECT_FALSE(part<QLabel>("hourSaid").text().isEmpty()) << "no time";
    type("hourStart", QStringLiteral("07:00"));
    EXPECT_TRUE(cell(0, 4).startsWith(QStringLiteral("Morning")));
    takeBack();
    EXPECT_EQ(cell(0, 4), QString());
}

TEST_F(TimetablePageTest, AHolidayClosesTheDay)
{
    part<QPushButton>("weekDays").click();
    type("daysName", QStringLiteral("Town day"));
    EXPECT_EQ(part<QTableWidget>("weekGrid").rowCount(), 0);
    takeBack();
    EXPECT_EQ(part<QTableWidget>("weekGrid").rowCount(), 1);
}

} // namespace
} // namespace levelbar::ui::timetable_page_test
