// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "storage/exchange/import.h"
#include "storage/gym_store.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/scripted_prompter.h"
#include "ui/background_review.h"
#include "ui/charts/sides_chart.h"
#include "ui/charts/strength_chart.h"
#include "ui/pages/member_page.h"
#include "ui/pages/person_editor.h"
#include "ui/pages/roster_model.h"
#include "ui/pages/roster_page.h"
#include "ui/pages/sets_model.h"
#include "ui/pages/sides_page.h"
#include "ui/theme.h"
#include "ui/workspace.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSignalSpy>
#include <QSpinBox>
#include <QTableView>
#include <QtTest/QTest>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace levelbar::ui::pages_test {
namespace {

using tests::kNow;

const Day kToday = parseDay("2026-11-20").value();

// Three people: one strong on the right, one who presses a barbell, one who never came.
class PagesTest : public testing::Test {
protected:
    PagesTest()
    {
        std::string members = "member_id,name,level,dominant_side,classes\n"
                              "M1,Ann Levelhead,novice,right,Noon\nM2,Bo Tilt,advanced,,\nM3,,,,\n";
        std::string sets = "date,member_id,exercise,set,side,load,unit,reps,rir\n";
        std::string trials = "date,member_id,test,side,trial,value\n";
        for (int week = 0; week < 12; ++week) {
            const std::string date = isoText(kToday - 7 * week);
            sets += date + ",M1,Barbell bench press,1,both,60,kg,8,2\n";
            trials +=
                date + ",M2,Grip strength,left,1,30\n" + date + ",M2,Grip strength,right,1,42\n";
        }
        storage::ImportRequest request;
        request.members = {"members.csv", members};
        request.sets = {"sets.csv", sets};
        request.tests = {"tests.csv", trials};
        const auto report = storage::importCsv(logbook, request, kNow);
        EXPECT_TRUE(report.faults.empty());
        QSignalSpy ready(&review, &BackgroundReview::ready);
        review.request();
        EXPECT_TRUE(ready.wait(10'000));
    }

    testing::StrictMock<ScriptedPrompter> prompter;
    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    ChangeNotifier notifier;
    Workspace workspace{logbook, notifier, {[] { return kNow; }, [] { return kToday; }}, prompter};
    BackgroundReview review{logbook, notifier, workspace.clock};
};

TEST_F(PagesTest, APersonIsAddedByKeyboardWithTheirClassAndChangedLater)
{
    RosterPage page(workspace, review);
    page.show();
    page.activateWindow(); // a shortcut is of the active window
    ASSERT_TRUE(QTest::qWaitForWindowActive(&page));
    QSignalSpy opened(&page, &RosterPage::opened);
    QTest::keyClick(
        page.findChild<QTableView*>(QStringLiteral("rosterTable")), Qt::Key_N, Qt::ControlModifier);
    auto* editor = page.findChild<PersonEditor*>(QStringLiteral("personEditor"));
    ASSERT_NE(editor, nullptr);
    const auto edit = [&](const char* name) {
        return editor->findChild<QLineEdit*>(QLatin1String(name));
    };
    EXPECT_EQ(edit("personCode")->text(), QStringLiteral("M4"));
    QTest::keyClicks(edit("personName"), QStringLiteral("Cleo Marsh"));
    QTest::keyClicks(edit("personStature"), QStringLiteral("17"));
    auto* classes = editor->findChild<QListWidget*>(QStringLiteral("personClasses"));
    ASSERT_EQ(classes->count(), 1);
    QTest::keyClick(classes, Qt::Key_Space);
    QTest::keyClick(edit("personName"), Qt::Key_Return, Qt::ControlModifier);
    auto* refusal = editor->findChild<QLabel*>(QStringLiteral("personRefusal"));
    EXPECT_TRUE(refusal->text().startsWith(QStringLiteral("Not kept. Tall, cm: ")))
        << refusal->text().toStdString();
    edit("personStature")->setText(QStringLiteral("171,5"));
    QTest::keyClick(edit("personName"), Qt::Key_Return, Qt::ControlModifier);
    ASSERT_EQ(opened.count(), 1);
    const auto stored = storage::MemberStore(logbook).find("M4");
    ASSERT_TRUE(stored);
    EXPECT_EQ(stored->name, "Cleo Marsh");
    EXPECT_EQ(stored->statureTenthMillimetres, 17150);
    EXPECT_FALSE(stored->sex) << "what was not said stays empty";
    EXPECT_EQ(storage::ClassStore(logbook).classesOf(stored->id).size(), 1U);

    MemberPage person(workspace, review);
    person.open(stored->id);
    QTest::mouseClick(person.findChild<QPushButton*>(QStringLiteral("memberChange")),
                      Qt::LeftButton);
    auto* change = person.findChild<PersonEditor*>(QStringLiteral("personEditor"));
    change->findChild<QLineEdit*>(QStringLiteral("personCode"))->setText(QStringLiteral("M1"));
    auto* keep = change->findChild<QPushButton*>(QStringLiteral("personKeep"));
    QTest::mouseClick(keep, Qt::LeftButton);
    EXPECT_EQ(change->findChild<QLabel*>(QStringLiteral("personRefusal"))->text(),
              QStringLiteral("Not kept. The id M1 is taken already."));
    change->findChild<QLineEdit*>(QStringLiteral("personCode"))->setText(QStringLiteral("M4"));
    change->findChild<QComboBox*>(QStringLiteral("personExperience"))->setCurrentIndex(1);
    QTest::mouseClick(keep, Qt::LeftButton);
    EXPECT_EQ(storage::MemberStore(logbook).byId(stored->id)->experience, Experience::Novice);
    EXPECT_EQ(storage::MemberStore(logbook).byId(stored->id)->statureTenthMillimetres, 17150);
    EXPECT_EQ(storage::ClassStore(logbook).classesOf(stored->id).size(), 1U);
}

TEST_F(PagesTest, TheRosterModelIsSound)
{
    RosterModel model;
    const QAbstractItemModelTester tester(&model,
                                          QAbstractItemModelTester::FailureReportingMode::Warning);
    model.show(review.current(), {});
    EXPECT_EQ(model.rowCount(), 3);
    model.show(review.current(), {});
    EXPECT_EQ(model.index(1, RosterModel::Difference).data().toString(),
              QStringLiteral("left by 29 %")); // 30 and 42: 28.6 % of the stronger
    EXPECT_EQ(model.index(2, RosterModel::Person).data().toString(), QStringLiteral("M3"));
    EXPECT_FALSE(
        model.index(1, RosterModel::Difference).data(Qt::AccessibleTextRole).toString().isEmpty());
}

TEST_F(PagesTest, PeopleAreFilteredAsOneTypes)
{
    RosterPage page(workspace, review);
    auto* filter = page.findChild<QLineEdit*>(QStringLiteral("rosterFilter"));
    auto* table = page.findChild<QTableView*>(QStringLiteral("rosterTable"));
    EXPECT_EQ(table->model()->rowCount(), 3);
    QTest::keyClicks(filter, QStringLiteral("level"));
    EXPECT_EQ(table->model()->rowCount(), 1);
    filter->clear();
    QTest::keyClicks(filter, QStringLiteral("noon nov")); // class and experience
    EXPECT_EQ(table->model()->rowCount(), 1);
    filter->clear();
    QTest::keyClicks(filter, QStringLiteral("work on"));
    EXPECT_EQ(table->model()->rowCount(), 1);
    QSignalSpy opened(&page, &RosterPage::opened);
    QTest::keyClick(filter, Qt::Key_Return);
    ASSERT_EQ(opened.count(), 1);
}

TEST_F(PagesTest, APersonsChartHoldsTheirSetsAndReadsThemOut)
{
    MemberPage page(workspace, review);
    page.open(storage::MemberStore(logbook).find("M1")->id);
    auto* chart = page.findChild<StrengthChart*>();
    EXPECT_EQ(chart->series().dotCount(), 12);
    EXPECT_GE(chart->series().linePointCount(), 12);
    auto* view = page.findChild<QWidget*>(QStringLiteral("strengthChartView"));
    QTest::keyClick(view, Qt::Key_Left);
    EXPECT_TRUE(chart->readOut().contains(QStringLiteral("60 kg × 8")))
        << chart->readOut().toStdString();
    const QString words = page.findChild<QLabel*>(QStringLiteral("memberStrengthWords"))->text();
    EXPECT_TRUE(words.contains(QStringLiteral("nine times in ten"))) << words.toStdString();
    EXPECT_EQ(page.findChild<QTableView*>(QStringLiteral("memberSets"))->model()->rowCount(), 12);
}

TEST_F(PagesTest, TheCardGivesTheNextLoadAndItsReason)
{
    MemberPage page(workspace, review);
    page.open(storage::MemberStore(logbook).find("M1")->id);
    const auto text = [&page](const char* name) {
        return page.findChild<QLabel*>(QLatin1String(name))->text();
    };
    EXPECT_TRUE(text("targetHeadline").contains(QStringLiteral("kg ×")))
        << text("targetHeadline").toStdString();
    EXPECT_TRUE(text("targetPlates").contains(QStringLiteral("a side")))
        << text("targetPlates").toStdString();
    EXPECT_TRUE(text("targetReasons").contains(QStringLiteral("nine times in ten")));
    const QString before = text("targetReasons");
    page.findChild<QSpinBox*>(QStringLiteral("targetReps"))->setValue(3);
    EXPECT_NE(text("targetReasons"), before);
}

TEST_F(PagesTest, EffortIsShownOnTheScaleThatTheGymChose)
{
    {
        storage::Action action(logbook, storage::ActionKind::EditGym, tests::kNow);
        storage::GymStore::setEffortScale(action, EffortScale::Rpe);
        action.commit();
    }
    MemberPage page(workspace, review);
    page.open(storage::MemberStore(logbook).find("M1")->id);
    const auto* sets = page.findChild<QTableView*>(QStringLiteral("memberSets"))->model();
    EXPECT_EQ(sets->headerData(SetsModel::ReserveColumn, Qt::Horizontal).toString(),
              QStringLiteral("RPE"));
    EXPECT_EQ(sets->index(0, SetsModel::ReserveColumn).data().toString(), QStringLiteral("8"));
    EXPECT_EQ(page.findChild<QDoubleSpinBox*>(QStringLiteral("targetReserve"))->value(), 8.0);
}

TEST_F(PagesTest, APersonWithoutSetsIsShownToo)
{
    MemberPage page(workspace, review);
    page.open(storage::MemberStore(logbook).find("M3")->id);
    EXPECT_EQ(page.findChild<QLabel*>(QStringLiteral("memberName"))->text(), QStringLiteral("M3"));
    EXPECT_EQ(page.findChild<StrengthChart*>()->series().dotCount(), 0);
}

TEST_F(PagesTest, LeftWeakerIsDrawnInTheLeftHalf)
{
    SidesPage page(workspace, review);
    page.resize(1200, 700);
    page.show();
    auto* chart = page.findChild<SidesChart*>();
    // Positive differences mean the right is stronger, so the left is the weaker side.
    EXPECT_LT(chart->place(20.0), chart->place(0.0));
    EXPECT_GT(chart->place(-20.0), chart->place(0.0));
    auto* work = page.findChild<QListWidget*>(QStringLiteral("workOnItList"));
    ASSERT_EQ(work->count(), 1);
    EXPECT_TRUE(work->item(0)->text().contains(QStringLiteral("Left weaker")))
        << work->item(0)->text().toStdString();
}

TEST(ThemeTest, BothThemesAreReadable)
{
    EXPECT_FALSE(isDark(lightPalette()));
    EXPECT_TRUE(isDark(darkPalette()));
    const auto luminance = [](const QColor& color) { // WCAG 2.1, relative luminance
        const auto part = [](double c) {
            return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
        };
        return 0.2126 * part(color.redF()) + 0.7152 * part(color.greenF()) +
               0.0722 * part(color.blueF());
    };
    const auto contrast = [&](const QColor& a, const QColor& b) {
        const double x = luminance(a) + 0.05;
        const double y = luminance(b) + 0.05;
        return std::max(x, y) / std::min(x, y);
    };
    for (const QPalette& palette : {lightPalette(), darkPalette()}) {
        const QColor base = palette.color(QPalette::Base);
        EXPECT_GE(contrast(palette.color(QPalette::Text), base), 7.0); // text, level AAA
        EXPECT_GE(contrast(colours(palette).quiet, base), 4.5);        // text, level AA
        EXPECT_GE(contrast(colours(palette).warning, base), 4.5);
        EXPECT_GE(contrast(colours(palette).left, base), 3.0); // graphics
        EXPECT_GE(contrast(colours(palette).right, base), 3.0);
    }
}

} // namespace
} // namespace levelbar::ui::pages_test
