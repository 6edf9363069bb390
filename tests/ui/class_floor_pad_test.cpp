// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/today_store.h"
#include "tests/ui/class_floor_fixture.h"
#include "ui/floor/pad_line.h"

#include <QKeyEvent>
#include <QSpinBox>

#include <algorithm>
#include <set>

namespace levelbar::ui::class_floor_pad_test {

namespace {

// Hands on the number pad. Mara and Noor came; both bench 60 × 8, then 14 × 10 with one arm.
class FloorPadTest : public ClassFloorTest {
protected:
    void SetUp() override
    {
        ClassFloorTest::SetUp();
        openPage();
        markPeople(2);
        pad = m_page->findChild<PadLine*>(QStringLiteral("padLine"));
        ASSERT_NE(pad, nullptr);
        pad->setFocus();
    }

    // '\n' is Enter, '\x1b' Escape.
    void type(const char* text) const
    {
        for (const char* at = text; *at != 0; ++at) {
            if (*at == '\n') {
                QTest::keyClick(pad, Qt::Key_Enter, Qt::KeypadModifier);
            } else if (*at == '\x1b') {
                QTest::keyClick(pad, Qt::Key_Escape);
            } else {
                QTest::keyClicks(pad, QString(QLatin1Char(*at)));
            }
        }
    }

    void markOtto() const
    {
        list()->setFocus();
        QTest::keyClick(list(), Qt::Key_End);
        QTest::keyClick(list(), Qt::Key_Space);
        pad->setFocus();
    }

    [[nodiscard]] std::string typed() const
    {
        return part<QLabel>("padTyped")->text().toStdString();
    }

    [[nodiscard]] std::string hint() const { return part<QLabel>("padHint")->text().toStdString(); }

    PadLine* pad = nullptr;
};

} // namespace

TEST_F(FloorPadTest, EachKeyedSetIsStoredAtOnceAndShownInTheGrid)
{
    type("\n9.2\n");
    ASSERT_EQ(stored().size(), 2U);
    EXPECT_EQ(stored()[0].performed.known, HowKnown::Accepted);
    EXPECT_EQ(stored()[0].member, mara);
    EXPECT_EQ(stored()[1].performed.reps, 9);
    EXPECT_EQ(stored()[1].performed.reserve, Reserve{20});
    EXPECT_EQ(shown(0, 0), "60 × 8");
    EXPECT_EQ(shown(1, 0), "60 × 9 r2");
    EXPECT_EQ(cursor(), (std::pair{0, 1})) << "the grid's cursor goes with the pad's";
    EXPECT_EQ(said(), "2 Noor Ashby: 60 kg × 9, 2 in reserve");
}

TEST_F(FloorPadTest, WhatTheGridWritesIsDoneForThePadToo)
{
    grid->setFocus();
    enter("7");
    pad->setFocus();
    type("\n");
    ASSERT_EQ(stored().size(), 2U);
    EXPECT_EQ(stored()[1].member, noor) << "the pad goes on behind the grid's set";
}

TEST_F(FloorPadTest, AHeldEnterDoesNotRunOn)
{
    type("\n");
    for (int repeat = 0; repeat < 20; ++repeat) {
        QKeyEvent held(
            QEvent::KeyPress, Qt::Key_Enter, Qt::KeypadModifier, QStringLiteral("\r"), true, 1);
        QApplication::sendEvent(pad, &held);
    }
    EXPECT_EQ(stored().size(), 1U);
}

TEST_F(FloorPadTest, ARoundAsPlannedIsOneActionAndTakenBackAtOnce)
{
    type("**");
    ASSERT_EQ(stored().size(), 2U);
    EXPECT_EQ(stored()[0].performed.known, HowKnown::Group);
    type("//");
    EXPECT_EQ(stored().size(), 0U);
    EXPECT_EQ(said(), "Taken back: Station 1, round 1: 2 as planned");
    EXPECT_EQ(shown(0, 0), "60 kg × 8");
}

TEST_F(FloorPadTest, TakingBackFollowsTheOrderInWhichPadAndGridWrote)
{
    type("9\n");
    grid->setFocus();
    enter("7");
    pad->setFocus();
    type("//");
    ASSERT_EQ(stored().size(), 1U);
    EXPECT_EQ(stored()[0].performed.reps, 9) << "the grid's set came last";
    type("//");
    EXPECT_EQ(stored().size(), 0U);
    EXPECT_EQ(said(), "Taken back: 1 Mara Linden: 60 kg × 9");
}

TEST_F(FloorPadTest, WhatOnlyThePadKnowsIsTakenBackInItsTurn)
{
    type("/2\n");
    EXPECT_EQ(cursor(), (std::pair{1, 0}));
    type("g\n");
    EXPECT_EQ(shown(1, 0), "has left");
    EXPECT_EQ(part<QLabel>("floorProgress")->text().toStdString(), "0 of 4 sets known");
    type("\n8\n//"); // not said why
    EXPECT_EQ(stored().size(), 0U);
    EXPECT_EQ(shown(1, 0), "has left");
    type("//");
    EXPECT_EQ(shown(1, 0), "60 kg × 8");
}

TEST_F(FloorPadTest, LoadsGoToTheNextOneThatExistsForTheSetsStillOpen)
{
    type("\n/1\n+");
    EXPECT_EQ(shown(0, 0), "60 × 8");
    EXPECT_EQ(shown(0, 1), "62.5 kg × 8");
    bool isStored = false;
    for (const PlannedSet& set : planned()) {
        isStored = isStored || (set.member == mara && set.exercise == bench && set.number == 2 &&
                                set.load == Mass::ofThousandths(62'500, MassUnit::Kilogram));
    }
    EXPECT_TRUE(isStored);
    type("//");
    EXPECT_EQ(shown(0, 1), "60 kg × 8");
}

TEST_F(FloorPadTest, PainBeforeAnySetIsKeptAsSomethingToFollowUp)
{
    type("/2\n.3.6.2.1\n0\n");
    EXPECT_EQ(stored().size(), 0U);
    const auto followUps = storage::TodayStore(*m_logbook).followUps(kClassDay + 1);
    ASSERT_EQ(followUps.size(), 1U);
    EXPECT_EQ(followUps.front().member, noor);
    EXPECT_NE(followUps.front().text.find("Pain 6 of 10, shoulder left"), std::string::npos)
        << followUps.front().text;
    type("//"); // the sets left out
    type("//"); // and the pain
    EXPECT_TRUE(storage::TodayStore(*m_logbook).followUps(kClassDay + 1).empty());
}

TEST_F(FloorPadTest, WhatTheNumbersOfAWordMeanIsSaidWhileItIsTyped)
{
    type(".3");
    EXPECT_NE(hint().find("2 shoulder"), std::string::npos) << hint();
    type("\x1b.6");
    EXPECT_NE(hint().find(".6.2 unwell"), std::string::npos) << hint();
}

TEST_F(FloorPadTest, EscapeBringsTheKeysHereFromTheListOfPeople)
{
    auto* filter = part<QLineEdit>("attendanceFilter");
    filter->setFocus();
    QTest::keyClick(filter, Qt::Key_Escape);
    EXPECT_TRUE(pad->hasFocus());
    list()->setFocus();
    QTest::keyClick(list(), Qt::Key_Escape);
    EXPECT_TRUE(pad->hasFocus());
}

TEST_F(FloorPadTest, PainIsStoredWithTheSetAndAsksForOneOfThree)
{
    type("\n/1\np6.2.1\n");
    EXPECT_EQ(stored()[0].performed.pain, 6);
    EXPECT_EQ(stored()[0].painArea, "shoulder");
    EXPECT_EQ(stored()[0].painSide, Side::Left);
    EXPECT_EQ(shown(0, 1), "waits: pain");
    EXPECT_NE(hint().find("3: "), std::string::npos) << hint();
    type("0\n");
    EXPECT_EQ(shown(0, 1), "left out: pain");
    type("//");
    EXPECT_EQ(shown(0, 1), "waits: pain");
    type("//");
    EXPECT_FALSE(stored()[0].performed.pain);
    EXPECT_EQ(shown(0, 1), "60 kg × 8");
}

TEST_F(FloorPadTest, AnotherExerciseTakesThePlaceOfThePlannedOne)
{
    type(".4\n");
    const std::size_t before = planned().size();
    EXPECT_NE(hint().find("1: "), std::string::npos);
    type("1\n");
    EXPECT_EQ(planned().size(), before);
    int benches = 0;
    for (const PlannedSet& set : planned()) {
        benches += set.member == mara && set.exercise == bench ? 1 : 0;
    }
    EXPECT_EQ(benches, 0);
    type("8\n");
    ASSERT_EQ(stored().size(), 1U);
    EXPECT_EQ(stored()[0].member, mara);
    EXPECT_FALSE(stored()[0].exercise == bench);
}

TEST_F(FloorPadTest, KitThatIsGoneChangesNothingBeforeOneIsPicked)
{
    const auto before = planned();
    type("k\n");
    EXPECT_NE(hint().find("0: none of these"), std::string::npos) << hint();
    EXPECT_EQ(planned(), before);
    type("0\n");
    EXPECT_EQ(planned(), before);
    EXPECT_EQ(said(), "Nothing changed");
}

TEST_F(FloorPadTest, WhatIsRefusedKeepsItsText)
{
    type("*7\n");
    EXPECT_EQ(typed(), "*7_");
    EXPECT_EQ(stored().size(), 0U);
    type("\x1b");
    EXPECT_EQ(typed(), "_");
}

TEST_F(FloorPadTest, NotCleanAndEasyDayReachTheLogbook)
{
    type("9\nc\n");
    EXPECT_EQ(stored()[0].performed.isClean, false);
    type("/2\ne\n");
    EXPECT_EQ(shown(1, 0).substr(0, 2), "55") << "about a tenth less, on a load that exists";
    EXPECT_EQ(shown(1, 1), "easy day");
}

TEST_F(FloorPadTest, AfterAnInterruptionEverybodyStandsWhereTheyStood)
{
    markOtto();
    part<QSpinBox>("floorRacks")->setValue(2);
    type("\n/2\ng\n"); // the first set, and Noor leaves
    waitMinutes(5);
    type("/1\ne\n"); // Mara has two benches of which one is done, and one set an arm
    const auto places = [this] {
        std::vector<std::string> all;
        for (int row = 0; row < grid->model()->rowCount(); ++row) {
            all.push_back(grid->model()->headerData(row, Qt::Vertical).toString().toStdString());
            for (int column = 0; column < grid->model()->columnCount(); ++column) {
                all.back() += "|" + shown(row, column);
            }
        }
        return all;
    };
    const auto before = places();
    EXPECT_NE(std::find_if(
                  before.begin(),
                  before.end(),
                  [](const std::string& row) { return row.find("has left") != std::string::npos; }),
              before.end());
    part<QSpinBox>("floorRacks")->setValue(2);
    reopen();
    EXPECT_EQ(places(), before);
    pad = m_page->findChild<PadLine*>(QStringLiteral("padLine"));
    pad->setFocus();
    type("/1\n8\n");
    ASSERT_EQ(stored().size(), 2U);
    EXPECT_TRUE(stored()[1].performed.isAtLeast) << "Mara's day is still an easy one";
}

TEST_F(FloorPadTest, SomebodyNewIsStoredWithoutANameAndLiftsNoBar)
{
    type("n23\n");
    EXPECT_NE(said().find("23 is new, not screened"), std::string::npos) << said();
    type("000\n/23\n8\n");
    ASSERT_EQ(stored().size(), 1U);
    const DoneSet set = stored()[0];
    const auto member = storage::MemberStore(*m_logbook).byId(set.member);
    ASSERT_TRUE(member);
    EXPECT_EQ(member->name, "");
    EXPECT_EQ(member->code, "Not screened 2026-11-25, bib 23");
    const Exercise lifted = *storage::LibraryStore(*m_logbook).all().exercise(set.exercise);
    EXPECT_TRUE(lifted.implement == Implement::BodyWeight ||
                lifted.implement == Implement::Dumbbell)
        << lifted.name;
    reopen();
    pad = m_page->findChild<PadLine*>(QStringLiteral("padLine"));
    pad->setFocus();
    type("/23\n7\n");
    ASSERT_EQ(stored().size(), 2U) << "the bib is theirs after an interruption";
    EXPECT_EQ(stored()[1].member, set.member);
}

TEST_F(FloorPadTest, SomebodyNewWhoSaysYesWaitsAndIsTakenBackInOneKey)
{
    type("n23\n010\n/23\n\n");
    EXPECT_EQ(stored().size(), 0U) << "speak with them first";
    type("\x1b//");
    type("//");
    EXPECT_FALSE(storage::MemberStore(*m_logbook).find("Not screened 2026-11-25, bib 23"));
    EXPECT_EQ(grid->model()->rowCount(), 2);
}

TEST_F(FloorPadTest, AnEasyDaysDroppedSetStaysDroppedAfterAnInterruption)
{
    type("/2\ne\n");
    ASSERT_EQ(shown(1, 1), "easy day");
    waitMinutes(5);
    type("/2\n8\n"); // the one that was left of the benches
    reopen();
    EXPECT_EQ(shown(1, 1), "easy day");
    EXPECT_EQ(shown(1, 0).substr(0, 2), "55") << "nothing is taken off twice";
}

TEST_F(FloorPadTest, SomebodyWithoutALoadIsNotStoredAtNothing)
{
    markOtto();
    type("/3\n8\n");
    EXPECT_EQ(stored().size(), 0U);
    EXPECT_NE(said().find("no load yet"), std::string::npos) << said();
    type("\x1b+8\n");
    ASSERT_EQ(stored().size(), 1U);
    EXPECT_GT(stored()[0].performed.load.kilograms(), 0.0);
}

TEST_F(FloorPadTest, RowsGoByRackAndTurnAndEnterStaysAtTheRack)
{
    markOtto();
    part<QSpinBox>("floorRacks")->setValue(2);
    EXPECT_EQ(grid->model()->headerData(0, Qt::Vertical, FloorModel::RackRole).toInt(), 1);
    pad->setFocus();
    type("*2\n");
    const std::pair<int, int> second = cursor();
    EXPECT_GT(second.first, 0);
    std::set<int> bibs;
    for (int row = 0; row < 3; ++row) {
        bibs.insert(grid->model()->headerData(row, Qt::Vertical, FloorModel::BibRole).toInt());
    }
    EXPECT_EQ(bibs, (std::set{1, 2, 3}));
}

TEST_F(FloorPadTest, SetsWorthWatchingAreAtMostOneAPerson)
{
    int eyes = 0;
    for (int row = 0; row < grid->model()->rowCount(); ++row) {
        for (int column = 0; column < grid->model()->columnCount(); ++column) {
            const QModelIndex at = grid->model()->index(row, column);
            eyes += at.data(FloorModel::IsWorthEyesRole).toBool() ? 1 : 0;
        }
    }
    EXPECT_GE(eyes, 1) << "both are new";
    EXPECT_LE(eyes, 2);
}

} // namespace levelbar::ui::class_floor_pad_test
