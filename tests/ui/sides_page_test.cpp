// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "storage/exchange/import.h"
#include "storage/side_store.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/scripted_prompter.h"
#include "ui/charts/member_sides_chart.h"
#include "ui/charts/sides_chart.h"
#include "ui/pages/member_page.h"
#include "ui/pages/side_card.h"
#include "ui/pages/sides_page.h"
#include "ui/side_text.h"
#include "ui/workspace.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSignalSpy>
#include <QTabWidget>
#include <QtTest/QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace levelbar::ui::sides_page_test {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using tests::kNow;

const Day kToday = parseDay("2026-11-20").value();

// Bo's left grip is far weaker, Ann's and Cy's grips are alike; Ann and Bo come at noon.
class SidesPageTest : public testing::Test {
protected:
    SidesPageTest()
    {
        const std::string members = "member_id,name,group,classes\n"
                                    "M1,Ann Levelhead,Harbour,Noon\nM2,Bo Tilt,Harbour,Noon\n"
                                    "M3,Cy Even,Customs,Evening\n";
        std::string sets = "date,member_id,exercise,set,side,load,unit,reps,rir,kind\n";
        std::string trials = "date,member_id,test,side,trial,value\n";
        for (int week = 0; week < 8; ++week) {
            const std::string date = isoText(kToday - 7 * week);
            const auto grip = [&](const char* who, const char* left, const char* right) {
                trials += date + "," + who + ",Grip strength,left,1," + left + "\n";
                trials += date + "," + who + ",Grip strength,right,1," + right + "\n";
            };
            grip("M1", "40", week % 2 == 0 ? "41" : "39");
            grip("M2", "30", "42");
            grip("M3", "35", week % 2 == 0 ? "35" : "36");
            const std::string press = ",M2,Single-arm dumbbell bench press,1,";
            sets += date + press + "left,14,kg,8,1,open\n";
            sets += date + press + "right,14,kg,10,1,open\n";
        }
        storage::ImportRequest request;
        request.members = {"members.csv", members};
        request.sets = {"sets.csv", sets};
        request.tests = {"tests.csv", trials};
        const auto report = storage::importCsv(logbook, request, kNow);
        EXPECT_TRUE(report.faults.empty());
        waitForReview([this] { review.request(); });
        bo = storage::MemberStore(logbook).find("M2")->id;
    }

    template <typename Work> void waitForReview(const Work& work)
    {
        QSignalSpy ready(&review, &BackgroundReview::ready);
        work();
        EXPECT_TRUE(ready.count() > 0 || ready.wait(10'000));
    }

    template <typename T> T* part(const QWidget& page, const char* name) const
    {
        T* found = page.findChild<T*>(QLatin1String(name));
        EXPECT_NE(found, nullptr) << name;
        return found;
    }

    [[nodiscard]] std::string text(const QWidget& page, const char* name) const
    {
        return part<QLabel>(page, name)->text().toStdString();
    }

    // Grip is not the only measure: the one that most people have comes first.
    void chooseBo(SidesPage& page) const
    {
        auto* chart = part<SidesChart>(page, "sidesChart");
        ASSERT_EQ(part<QComboBox>(page, "sidesMeasure")->currentText(),
                  QStringLiteral("Grip strength"));
        QTest::keyClick(chart, Qt::Key_Home); // left weakest first
        ASSERT_TRUE(chart->current().has_value());
        ASSERT_EQ(chart->current()->member, bo);
    }

    testing::StrictMock<ScriptedPrompter> prompter;
    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    ChangeNotifier notifier;
    Workspace workspace{logbook, notifier, {[] { return kNow; }, [] { return kToday; }}, prompter};
    BackgroundReview review{logbook, notifier, workspace.clock};
    MemberId bo;
};

TEST_F(SidesPageTest, AListSaysWhySinceWhenAndHowManyAreChance)
{
    const SidesPage page(workspace, review);
    auto* work = part<QListWidget>(page, "workOnItList");
    ASSERT_GE(work->count(), 1);
    const std::string line = work->item(0)->text().toStdString();
    EXPECT_THAT(line, HasSubstr("Bo Tilt"));
    EXPECT_THAT(line, HasSubstr("Left weaker by"));
    EXPECT_THAT(line, HasSubstr("Over 10 % with"));
    EXPECT_THAT(line, HasSubstr("Since "));
    EXPECT_THAT(text(page, "workOnItListTitle"), HasSubstr("expected to be chance"));
}

TEST_F(SidesPageTest, NoOddsAreGivenForWhoIsSentOn)
{
    SideReview side;
    side.tier = SideTier::SendOn;
    side.weaker = Side::Left;
    side.probabilitySide = 0.97;
    side.differencePercent = {18, 11, 25, 0.9, 4};
    side.listing.why = SideWhy::Hurts;
    side.listing.since = kToday;
    const std::string said = listedText(side).toStdString();
    EXPECT_THAT(said, HasSubstr("Left weaker by about 18 %."));
    EXPECT_THAT(said, HasSubstr("It hurt on"));
    EXPECT_THAT(said, Not(HasSubstr("likely")));
    EXPECT_THAT(said, Not(HasSubstr("certain")));
    EXPECT_THAT(said, Not(HasSubstr("in 100")));
}

TEST(SideCardTest, TheSetMoreIsChosenAndTrainingEndedWhereTheDifferenceIsSeen)
{
    SideCard card;
    QSignalSpy extra(&card, &SideCard::extraSetWanted);
    QSignalSpy ended(&card, &SideCard::trainingEnded);
    SidesRow row;
    row.side.measure.exercise = ExerciseId{5};
    row.side.tier = SideTier::Act;
    row.side.weaker = Side::Left;
    card.show(row, kToday);
    auto* box = card.findChild<QCheckBox*>(QStringLiteral("sideExtraSet"));
    auto* end = card.findChild<QPushButton*>(QStringLiteral("sideTrainingEnd"));
    ASSERT_TRUE(box != nullptr && end != nullptr);
    EXPECT_TRUE(box->isVisibleTo(&card));
    EXPECT_FALSE(end->isEnabled());
    box->click();
    ASSERT_EQ(extra.count(), 1);
    EXPECT_TRUE(extra.front().front().toBool());

    card.show(row, kToday, SidePrescription{ExerciseId{5}, kToday - 60, {}, {}, true});
    EXPECT_TRUE(box->isChecked());
    EXPECT_THAT(card.findChild<QLabel*>(QStringLiteral("sideTrained"))->text().toStdString(),
                HasSubstr("The eight weeks of one set more are over."));
    end->click();
    EXPECT_EQ(ended.count(), 1);
}

TEST(SideCardTest, WhatIsOnlyShownIsNotTrained)
{
    SideCard card;
    SidesRow row;
    row.side.measure.test = TestId{1}; // grip
    row.side.tier = SideTier::Act;
    row.side.weaker = Side::Left;
    card.show(row, kToday);
    EXPECT_FALSE(card.findChild<QCheckBox*>(QStringLiteral("sideExtraSet"))->isVisibleTo(&card));
}

TEST_F(SidesPageTest, RowsAndListsAreFilteredByClassAndGroup)
{
    const SidesPage page(workspace, review);
    EXPECT_EQ(text(page, "sidesCount"), "3 people");
    auto* byClass = part<QComboBox>(page, "sidesClass");
    byClass->setCurrentText(QStringLiteral("Noon"));
    EXPECT_EQ(text(page, "sidesCount"), "2 of 3 people");
    EXPECT_GE(part<QListWidget>(page, "workOnItList")->count(), 1);
    byClass->setCurrentText(QStringLiteral("Evening"));
    EXPECT_EQ(text(page, "sidesCount"), "1 of 3 people");
    EXPECT_EQ(part<QListWidget>(page, "workOnItList")->count(), 0);
    byClass->setCurrentIndex(0);
    part<QComboBox>(page, "sidesGroup")->setCurrentText(QStringLiteral("Customs"));
    EXPECT_EQ(text(page, "sidesCount"), "1 of 3 people");
}

TEST_F(SidesPageTest, TheChartIsSortedByCertaintyOrDifference)
{
    SidesPage page(workspace, review);
    auto* chart = part<SidesChart>(page, "sidesChart");
    chooseBo(page);
    QTest::keyClick(chart, Qt::Key_End);
    const MemberId last = chart->current()->member;
    EXPECT_NE(last, bo);
    part<QComboBox>(page, "sidesOrder")->setCurrentIndex(1);
    EXPECT_EQ(chart->current()->member, last) << "who is chosen stays chosen";
    QTest::keyClick(chart, Qt::Key_Home);
    EXPECT_EQ(chart->current()->member, bo) << "the surest";
}

TEST_F(SidesPageTest, AKnownReasonIsTypedAndEndedByKeys)
{
    SidesPage page(workspace, review);
    page.resize(1366, 768);
    page.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&page));
    page.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&page));
    auto* chart = part<SidesChart>(page, "sidesChart");
    chart->setFocus();
    chooseBo(page);
    QTest::keyClick(chart, Qt::Key_R);
    auto* reason = part<QLineEdit>(page, "sideReason");
    EXPECT_TRUE(reason->hasFocus());
    QTest::keyClicks(reason, QStringLiteral("Plays tennis"));
    waitForReview([&] { QTest::keyClick(reason, Qt::Key_Return); });
    const auto stored = storage::SideStore(logbook).ofMember(bo).reasons;
    ASSERT_EQ(stored.size(), 1U);
    EXPECT_EQ(stored.front().text, "Plays tennis");
    EXPECT_EQ(stored.front().since, kToday);
    EXPECT_GT(stored.front().agreedPercent, 10.0);
    const auto isListed = [&page, this] {
        const auto* work = part<QListWidget>(page, "workOnItList");
        bool isThere = false;
        for (int row = 0; row < work->count(); ++row) {
            const QString line = work->item(row)->text();
            isThere = isThere || (line.contains(QStringLiteral("Bo Tilt")) &&
                                  line.contains(QStringLiteral("Grip strength")));
        }
        return isThere;
    };
    EXPECT_FALSE(isListed()) << "a known reason keeps the name off";
    EXPECT_THAT(text(page, "sideCardWords"), HasSubstr("Plays tennis"));
    auto* end = part<QPushButton>(page, "sideReasonEnd");
    end->setFocus();
    waitForReview([&] { QTest::keyClick(end, Qt::Key_Space); });
    EXPECT_EQ(storage::SideStore(logbook).ofMember(bo).reasons.front().ended, kToday);
    EXPECT_TRUE(isListed());
}

TEST_F(SidesPageTest, TheThresholdIsTheMeasuresAndCanBeTakenBack)
{
    const SidesPage page(workspace, review);
    auto* threshold = part<QDoubleSpinBox>(page, "sidesThreshold");
    EXPECT_EQ(threshold->value(), 10.0);
    waitForReview([&] { threshold->setValue(15.0); });
    ASSERT_EQ(storage::SideStore(logbook).thresholds().size(), 1U);
    EXPECT_EQ(storage::SideStore(logbook).thresholds().begin()->second, 15.0);
    auto* measure = part<QComboBox>(page, "sidesMeasure");
    measure->setCurrentText(QStringLiteral("Single-arm dumbbell bench press"));
    EXPECT_EQ(threshold->value(), 10.0) << "the other measure keeps its own";
    measure->setCurrentText(QStringLiteral("Grip strength"));
    EXPECT_EQ(threshold->value(), 15.0);
    EXPECT_EQ(storage::recentActions(logbook, 1).front().kind,
              storage::ActionKind::EditSideThreshold);
}

TEST_F(SidesPageTest, EnterOpensThePersonFromChartAndList)
{
    SidesPage page(workspace, review);
    QSignalSpy opened(&page, &SidesPage::opened);
    chooseBo(page);
    QTest::keyClick(part<SidesChart>(page, "sidesChart"), Qt::Key_Return);
    auto* work = part<QListWidget>(page, "workOnItList");
    work->setCurrentRow(0);
    QTest::keyClick(work, Qt::Key_Return);
    ASSERT_EQ(opened.count(), 2);
    EXPECT_EQ(opened.at(0).at(0).value<MemberId>(), bo);
    EXPECT_EQ(opened.at(1).at(0).value<MemberId>(), bo);
}

TEST_F(SidesPageTest, ALineOfAListChoosesItsMeasureAndRowInTheChart)
{
    const SidesPage page(workspace, review);
    for (const char* name : {"workOnItList", "checkAgainList"}) {
        auto* list = part<QListWidget>(page, name);
        for (int row = 0; row < list->count(); ++row) {
            const QString line = list->item(row)->text();
            list->setCurrentRow(row);
            const auto chosen = part<SidesChart>(page, "sidesChart")->current();
            ASSERT_TRUE(chosen.has_value());
            EXPECT_THAT(line.toStdString(), HasSubstr(chosen->side.measure.name));
            EXPECT_THAT(line.toStdString(), HasSubstr(chosen->name));
            EXPECT_EQ(list->currentRow(), row);
        }
    }
}

TEST_F(SidesPageTest, APersonsPictureSinksWhereTheLeftIsWeaker)
{
    MemberPage page(workspace, review);
    page.resize(1366, 768);
    page.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&page));
    page.open(bo);
    page.showSidesPicture();
    const auto* chart = part<MemberSidesChart>(page, "memberSidesChart");
    EXPECT_GT(chart->differenceHeight(20.0), chart->differenceHeight(0.0)); // further down
    EXPECT_LT(chart->differenceHeight(-20.0), chart->differenceHeight(0.0));
    EXPECT_EQ(part<QComboBox>(page, "memberSidesMeasure")->count(), 2);
    EXPECT_EQ(chart->figure().pairs.size(), 8U);
}

TEST_F(SidesPageTest, APersonsPictureIsReadOutByKeys)
{
    MemberPage page(workspace, review);
    page.resize(1366, 768);
    page.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&page));
    page.open(bo);
    page.showSidesPicture();
    auto* chart = part<MemberSidesChart>(page, "memberSidesChart");
    part<QComboBox>(page, "memberSidesMeasure")
        ->setCurrentText(QStringLiteral("Single-arm dumbbell bench press"));
    EXPECT_THAT(chart->accessibleDescription().toStdString(),
                HasSubstr("Single-arm dumbbell bench press: "));
    QTest::keyClick(chart, Qt::Key_End);
    EXPECT_THAT(chart->readOut().toStdString(),
                HasSubstr("20 Nov 2026: 8 and 10 reps with 14 kg: about"));
    EXPECT_THAT(chart->readOut().toStdString(), HasSubstr("An open pair."));
    QTest::keyClick(chart, Qt::Key_Left);
    EXPECT_THAT(chart->readOut().toStdString(), HasSubstr("13 Nov 2026"));
    QTest::keyClick(chart, Qt::Key_Home);
    EXPECT_THAT(chart->readOut().toStdString(), HasSubstr("2 Oct 2026"));
}

TEST_F(SidesPageTest, ALineUnderLeftAndRightOpensItsPicture)
{
    MemberPage page(workspace, review);
    page.resize(1366, 768);
    page.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&page));
    page.open(bo);
    auto* pictures = part<QTabWidget>(page, "memberPictures");
    EXPECT_EQ(pictures->currentIndex(), 0);
    auto* lines = part<QListWidget>(page, "memberSides");
    lines->setCurrentRow(1);
    QTest::keyClick(lines, Qt::Key_Return);
    EXPECT_EQ(pictures->currentIndex(), 1);
    EXPECT_EQ(part<QComboBox>(page, "memberSidesMeasure")->currentIndex(), 1);
}

} // namespace
} // namespace levelbar::ui::sides_page_test
