// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "storage/exchange/import.h"
#include "storage/goal_store.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/scripted_prompter.h"
#include "ui/background_review.h"
#include "ui/charts/strength_chart.h"
#include "ui/charts/test_chart.h"
#include "ui/pages/attendance_strip.h"
#include "ui/pages/member_page.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableView>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace levelbar::ui::member_page_test {
namespace {

using tests::kNow;

const Day kToday = parseDay("2026-11-20").value();

// One person: a bench press and a squat a week for half a year, with a lay-off, a painful day, a
// tested maximum, body masses and grip tests.
class MemberPageTest : public testing::Test {
protected:
    MemberPageTest()
    {
        std::string sets = "date,member_id,exercise,set,side,load,unit,reps,rir,pain\n";
        std::string trials = "date,member_id,test,side,trial,value\n";
        for (int week = 0; week < 26; ++week) {
            if (week >= 10 && week < 14) {
                continue; // the lay-off: five weeks between two days
            }
            const std::string date = isoText(kToday - 7 * week);
            const std::string load = std::to_string(80 - week);
            sets += date + ",M1,Barbell bench press,1,both," + load + ",kg,8,2," +
                    (week == 3 ? "4" : "") + "\n";
            sets += date + ",M1,Back squat,1,both,100,kg,8,2,\n";
            trials += date + ",M1,Grip strength,left,1,40\n";
        }
        trials += isoText(kToday - 60) + ",M1,Body mass,both,1,80\n";
        trials += isoText(kToday - 15) + ",M1,One-rep max: Barbell bench press,both,1,100\n";
        storage::ImportRequest request;
        request.members = {"members.csv", "member_id,name,level\nM1,Ann Levelhead,novice\nM2,,\n"};
        request.sets = {"sets.csv", sets};
        request.tests = {"tests.csv", trials};
        const auto report = storage::importCsv(logbook, request, kNow);
        EXPECT_TRUE(report.faults.empty());
        QSignalSpy ready(&review, &BackgroundReview::ready);
        review.request();
        EXPECT_TRUE(ready.wait(20'000));
        page.resize(1200, 700);
        page.open(storage::MemberStore(logbook).find("M1")->id);
    }

    template <typename T> T& part(const char* name)
    {
        auto* found = page.findChild<T*>(QLatin1String(name));
        EXPECT_NE(found, nullptr) << name;
        return *found;
    }

    StrengthChart& chart() { return *page.findChild<StrengthChart*>(); }

    void key(Qt::Key which, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        QTest::keyClick(&part<QWidget>("strengthChartView"), which, modifiers);
    }

    void chooseBench()
    {
        QComboBox& box = part<QComboBox>("memberExercise");
        box.setCurrentIndex(box.findText(QStringLiteral("Barbell bench press")));
    }

    testing::StrictMock<ScriptedPrompter> prompter;
    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    ChangeNotifier notifier;
    Workspace workspace{logbook, notifier, {[] { return kNow; }, [] { return kToday; }}, prompter};
    BackgroundReview review{logbook, notifier, workspace.clock};
    MemberPage page{workspace, review};
};

TEST_F(MemberPageTest, TheChartHoldsForecastLayOffAndPain)
{
    chooseBench();
    const StrengthCourse& course = chart().view().course;
    EXPECT_GE(chart().series().forecastPointCount(), 3);
    ASSERT_EQ(course.layOffs.size(), 1U);
    EXPECT_EQ(course.layOffs[0].to - course.layOffs[0].from, 35);
    ASSERT_EQ(course.pains.size(), 1U);
    EXPECT_EQ(course.pains[0].score, 4);
    const QString summary = part<QWidget>("strengthChartView").accessibleName();
    EXPECT_TRUE(summary.startsWith(QStringLiteral("Barbell bench press: rising ")))
        << summary.toStdString();
    EXPECT_TRUE(summary.contains(QStringLiteral("Days with pain: 1"))) << summary.toStdString();
}

TEST_F(MemberPageTest, AGoalIsSetByKeyboardAndStandsInWordsAndChart)
{
    page.show();
    page.activateWindow(); // a shortcut is of the active window
    ASSERT_TRUE(QTest::qWaitForWindowActive(&page));
    chooseBench();
    EXPECT_EQ(chart().series().goalPointCount(), 0);
    QTest::keyClick(&page, Qt::Key_G, Qt::ControlModifier);
    QLineEdit& load = part<QLineEdit>("goalLoad");
    QLineEdit& by = part<QLineEdit>("goalBy");
    ASSERT_TRUE(load.isVisible());
    QTest::keyClicks(&load, QStringLiteral("150"));
    QTest::keyClicks(&by, QStringLiteral("yesterday"));
    QTest::keyClick(&by, Qt::Key_Return);
    EXPECT_TRUE(part<QLabel>("goalRefusal").text().startsWith(QStringLiteral("Not kept: ")));
    by.setText(QStringLiteral("84"));
    QTest::keyClick(&by, Qt::Key_Return);
    EXPECT_FALSE(load.isVisible());
    const MemberId member = storage::MemberStore(logbook).find("M1")->id;
    const auto goals = storage::GoalStore(logbook).ofMember(member);
    ASSERT_EQ(goals.size(), 1U);
    EXPECT_EQ(goals[0].load, Mass::ofKilograms(150.0));
    EXPECT_EQ(goals[0].by, kToday + 84);
    EXPECT_TRUE(part<QLabel>("memberStrengthWords")
                    .text()
                    .contains(QStringLiteral("Goal 150 kg by 12 Feb: ")))
        << part<QLabel>("memberStrengthWords").text().toStdString();
    EXPECT_GT(chart().series().goalPointCount(), 2);
    EXPECT_GE(chart().window().to(), kToday + 84);
    QTest::keyClick(&page, Qt::Key_G, Qt::ControlModifier);
    QTest::mouseClick(&part<QPushButton>("goalDrop"), Qt::LeftButton);
    EXPECT_TRUE(storage::GoalStore(logbook).ofMember(member).empty());
    EXPECT_EQ(chart().series().goalPointCount(), 0);
}

TEST_F(MemberPageTest, KeysZoomMoveAndShowEverything)
{
    chooseBench();
    const TimeWindow& window = chart().window();
    ASSERT_TRUE(window.isWhole());
    const int all = window.to() - window.from();
    key(Qt::Key_Plus);
    EXPECT_LT(window.to() - window.from(), all);
    const Day before = window.from();
    key(Qt::Key_Left, Qt::ShiftModifier);
    EXPECT_LT(window.from(), before);
    key(Qt::Key_0);
    EXPECT_TRUE(window.isWhole());
    key(Qt::Key_Minus); // no farther than everything
    EXPECT_TRUE(window.isWhole());
}

TEST_F(MemberPageTest, SteppingReadsOutDotsThenTheForecastAndBringsThemIntoView)
{
    chooseBench();
    key(Qt::Key_Plus);
    key(Qt::Key_Plus);
    key(Qt::Key_Plus);
    key(Qt::Key_Left); // the newest dot, outside what is shown
    EXPECT_TRUE(chart().readOut().contains(QStringLiteral("80 kg × 8")))
        << chart().readOut().toStdString();
    EXPECT_LE(kToday, chart().window().to());
    key(Qt::Key_Right);
    EXPECT_TRUE(chart().readOut().contains(QStringLiteral("if it goes on so: about")))
        << chart().readOut().toStdString();
}

TEST_F(MemberPageTest, LoadsAreTakenInPoundsOrPerBodyMass)
{
    chooseBench();
    QComboBox& unit = part<QComboBox>("memberUnit");
    unit.setCurrentIndex(unit.findText(QStringLiteral("lb")));
    EXPECT_NEAR(chart().view().scale.of(100.0, kToday), 220.4623, 1e-3);
    unit.setCurrentIndex(unit.findText(QStringLiteral("per body mass")));
    EXPECT_DOUBLE_EQ(chart().view().scale.of(100.0, kToday), 1.25); // 80 kg
    key(Qt::Key_Left);
    EXPECT_TRUE(chart().readOut().contains(QStringLiteral("× body mass")))
        << chart().readOut().toStdString();
}

TEST_F(MemberPageTest, ASecondExerciseStandsBesideTheFirst)
{
    chooseBench();
    QComboBox& beside = part<QComboBox>("memberBeside");
    beside.setCurrentIndex(beside.findText(QStringLiteral("beside Back squat")));
    ASSERT_TRUE(chart().view().other.has_value());
    EXPECT_EQ(chart().view().otherName, QStringLiteral("Back squat"));
    EXPECT_FALSE(chart().view().other->figure.dots.empty());
    beside.setCurrentIndex(0);
    EXPECT_FALSE(chart().view().other.has_value());
}

TEST_F(MemberPageTest, EveryTestHasItsLastValueTrendAndChart)
{
    QListWidget& list = part<QListWidget>("memberTests");
    ASSERT_EQ(list.count(), 3);
    int grip = -1;
    int mass = -1;
    for (int row = 0; row < list.count(); ++row) {
        const QString text = list.item(row)->text();
        grip = text.startsWith(QStringLiteral("Grip strength, left\n40 kg")) ? row : grip;
        mass = text.startsWith(QStringLiteral("Body mass\n80 kg, too early")) ? row : mass;
    }
    ASSERT_GE(grip, 0);
    ASSERT_GE(mass, 0);
    list.setCurrentRow(grip);
    const auto* figure = page.findChild<TestChart*>();
    EXPECT_EQ(figure->valueCount(), 22);
    EXPECT_GE(figure->forecastPointCount(), 2);
    list.setCurrentRow(mass);
    const QString words = part<QLabel>("memberTestWords").text();
    EXPECT_TRUE(words.contains(QStringLiteral("Too early: 1 day seen."))) << words.toStdString();
}

TEST_F(MemberPageTest, SetsAreFilteredAsOneTypes)
{
    QLineEdit& filter = part<QLineEdit>("memberSetsFilter");
    const auto* sets = part<QTableView>("memberSets").model();
    EXPECT_EQ(sets->rowCount(), 44);
    QTest::keyClicks(&filter, QStringLiteral("squat"));
    EXPECT_EQ(sets->rowCount(), 22);
    EXPECT_EQ(part<QLabel>("memberSetsCount").text(), QStringLiteral("Sets: 22 of 44, days: 22"));
    QTest::keyClicks(&filter, QStringLiteral(" nothing"));
    EXPECT_EQ(sets->rowCount(), 0);
    QTest::keyClick(&filter, Qt::Key_Escape);
    EXPECT_EQ(sets->rowCount(), 44);
}

TEST_F(MemberPageTest, TheStripShowsTwelveWeeks)
{
    const auto& strip = part<AttendanceStrip>("memberAttendance");
    EXPECT_EQ(strip.daysShown(), 12); // ten Fridays and two days of tests
    EXPECT_TRUE(strip.accessibleName().startsWith(QStringLiteral("Days seen in twelve weeks: ")));
}

TEST_F(MemberPageTest, APersonWithoutAnythingHasEmptyTabs)
{
    page.open(storage::MemberStore(logbook).find("M2")->id);
    EXPECT_EQ(part<QLabel>("memberTestWords").text(), QStringLiteral("Nothing tested yet."));
    EXPECT_EQ(chart().series().dotCount(), 0);
    key(Qt::Key_Right);
    key(Qt::Key_Plus);
    EXPECT_FALSE(chart().readOut().isEmpty());
}

TEST(TimeWindowTest, StaysWithinAllAndAboveTwoWeeks)
{
    TimeWindow window;
    window.setWhole(Day{0}, Day{100});
    window.zoom(2.0, Day{25});
    EXPECT_EQ(window.to() - window.from(), 50);
    EXPECT_EQ(window.from(), Day{12}); // 25 stays a quarter of the way along
    window.zoom(100.0, Day{25});
    EXPECT_EQ(window.to() - window.from(), TimeWindow::kFewestDays);
    window.move(100.0);
    EXPECT_EQ(window.to(), Day{100});
    window.bringIn(Day{3});
    EXPECT_EQ(window.from(), Day{3});
    window.zoom(0.001, Day{50});
    EXPECT_TRUE(window.isWhole());
    window.show(Day{80}, Day{40}); // dragged backwards
    EXPECT_EQ(window.from(), Day{40});
    EXPECT_EQ(window.to(), Day{80});
}

} // namespace
} // namespace levelbar::ui::member_page_test
