// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/class_floor_fixture.h"

#include <QKeyEvent>

#include <algorithm>

namespace levelbar::ui::class_floor_log_test {

namespace {

void pressHeld(QWidget* widget, int key, int repeats)
{
    for (int repeat = 0; repeat < repeats; ++repeat) {
        QKeyEvent event(QEvent::KeyPress, key, Qt::NoModifier, QStringLiteral("\r"), true, 1);
        QApplication::sendEvent(widget, &event);
    }
}

} // namespace

TEST_F(ClassFloorTest, LookingAtAClassWritesNothing)
{
    openPage();
    EXPECT_FALSE(meeting().has_value());
    EXPECT_TRUE(storage::recentActions(*m_logbook, 10).empty());
    EXPECT_EQ(grid->model()->columnCount(), 4);
    EXPECT_EQ(grid->model()->rowCount(), 0);
}

TEST_F(ClassFloorTest, MarkingWhoCameOpensTheMeetingAndPlansWhatEachLiftedLast)
{
    openPage();
    markPeople(2);
    ASSERT_TRUE(meeting().has_value());
    EXPECT_EQ(planned().size(), 8U); // two people: bench twice, one arm left and right
    EXPECT_EQ(shown(0, 0), "60 kg × 8");
    EXPECT_EQ(shown(0, 1), "60 kg × 8");
    EXPECT_EQ(shown(1, 2), "14 kg × 10");
    EXPECT_EQ(stored().size(), 0U);
}

TEST_F(ClassFloorTest, AClassLoggedByKeysIsThereAfterReopeningAndCanBeTakenBackSetBySet)
{
    openPage();
    part<QLineEdit>("floorInitials")->setFocus();
    QTest::keyClicks(part<QLineEdit>("floorInitials"), QStringLiteral("KV"));
    markPeople(2);
    // Down the column through the people, then the next set; each side is a cell of its own, the
    // one that starts today first.
    for (const char* text : {"", "9", "9.2", "7,0", "0", "", "11", "12.1"}) {
        enter(text);
    }
    EXPECT_EQ(said(), "Every planned set is known.");
    const auto before = stored();
    ASSERT_EQ(before.size(), 8U);
    EXPECT_EQ(shown(0, 0), "60 × 8");
    EXPECT_EQ(shown(1, 0), "60 × 9");
    EXPECT_EQ(shown(0, 1), "60 × 9 r2");
    EXPECT_EQ(shown(1, 1), "60 × 7 r0");
    EXPECT_EQ(shown(0, 3), "14 × 0");
    EXPECT_EQ(shown(1, 2), "14 × 12 r1");
    const auto accepted = std::count_if(before.begin(), before.end(), [](const DoneSet& set) {
        return set.performed.known == HowKnown::Accepted && !set.performed.reserve;
    });
    EXPECT_EQ(accepted, 2);
    for (const DoneSet& set : before) {
        EXPECT_EQ(set.keyedBy, "KV");
        EXPECT_EQ(set.keyedAt, kClassMoment);
        EXPECT_TRUE(set.planned.has_value());
        EXPECT_EQ(set.performed.day, kClassDay);
    }

    reopen();
    EXPECT_EQ(stored(), before);
    EXPECT_EQ(shown(0, 1), "60 × 9 r2");
    EXPECT_EQ(shown(1, 2), "14 × 12 r1");
    EXPECT_EQ(part<QLineEdit>("floorInitials")->text().toStdString(), "KV");

    grid->setFocus();
    grid->goTo(grid->model()->index(0, 0));
    press(Qt::Key_Backspace);
    EXPECT_EQ(said(),
              "Taken back: Noor Ashby, Single-arm dumbbell bench press, set 1, left: "
              "14 kg × 12, 1 in reserve (counted)");
    for (std::size_t left = 7; left > 0; --left) {
        EXPECT_EQ(stored().size(), left);
        press(Qt::Key_Z, Qt::ControlModifier);
    }
    EXPECT_EQ(stored().size(), 0U);
    EXPECT_EQ(said(),
              "Taken back: Mara Linden, Barbell bench press, set 1: 60 kg × 8 (as planned)");
    EXPECT_EQ(shown(0, 0), "60 kg × 8");
    EXPECT_EQ(planned().size(), 8U);
    press(Qt::Key_Z, Qt::ControlModifier);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_FALSE(meeting().has_value()) << "marking the first person is taken back last";
    QTest::keyClick(list(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(said(), "There is nothing to take back.");
}

TEST_F(ClassFloorTest, NumbersAndOrderFollowWhatWasDoneFirst)
{
    openPage();
    markPeople(1);
    grid->goTo(grid->model()->index(0, 1)); // the second set is done first
    enter("6");
    grid->goTo(grid->model()->index(0, 0));
    enter("5");
    const auto sets = stored();
    ASSERT_EQ(sets.size(), 2U);
    EXPECT_EQ(sets[0].performed.reps, 6);
    EXPECT_EQ(sets[0].performed.number, 1);
    EXPECT_EQ(sets[0].performed.order, 1);
    EXPECT_EQ(sets[1].performed.number, 2);
    EXPECT_EQ(sets[1].performed.order, 2);
    EXPECT_EQ(shown(0, 1), "60 × 6") << "each stands where it was planned";
    EXPECT_EQ(shown(0, 0), "60 × 5");
}

TEST_F(ClassFloorTest, AHeldEnterStoresOneSet)
{
    openPage();
    markPeople(2);
    press(Qt::Key_Return);
    pressHeld(grid, Qt::Key_Return, 30);
    pressHeld(grid, Qt::Key_Enter, 30);
    EXPECT_EQ(stored().size(), 1U);
    EXPECT_EQ(cursor(), std::pair(1, 0));
}

TEST_F(ClassFloorTest, AHeldBackspaceTakesBackOneSet)
{
    openPage();
    markPeople(2);
    enter("");
    enter("");
    press(Qt::Key_Backspace);
    pressHeld(grid, Qt::Key_Backspace, 30);
    EXPECT_EQ(stored().size(), 1U);
}

TEST_F(ClassFloorTest, BackspaceInACellErasesWhatWasTypedAndNothingElse)
{
    openPage();
    markPeople(1);
    enter("8");
    keys("12");
    press(Qt::Key_Backspace);
    EXPECT_EQ(shown(0, 1), "1");
    press(Qt::Key_Backspace);
    press(Qt::Key_Backspace);
    EXPECT_EQ(stored().size(), 1U);
}

TEST_F(ClassFloorTest, AnUnreadableCellStaysWithItsTextAndASentenceAndStoresNothing)
{
    openPage();
    markPeople(2);
    for (const char* bad : {"9..2", "201", "9.", ".5", "x", "9.2.1", "1e9"}) {
        enter(bad);
        EXPECT_EQ(cursor(), std::pair(0, 0)) << bad;
        EXPECT_EQ(shown(0, 0), bad);
        EXPECT_THAT(fault(), ::testing::HasSubstr(std::string("'") + bad + "'"));
        EXPECT_EQ(said(), "Mara Linden, Barbell bench press, set 1: " + fault());
        EXPECT_TRUE(part<QLabel>("floorCellFault")->isVisible());
        EXPECT_EQ(stored().size(), 0U) << bad;
        press(Qt::Key_Escape);
        EXPECT_EQ(shown(0, 0), "60 kg × 8");
        EXPECT_FALSE(part<QLabel>("floorCellFault")->isVisible());
    }
}

TEST_F(ClassFloorTest, AnUnreadableCellThatIsLeftKeepsItsTextAndIsStoredOnceMended)
{
    openPage();
    markPeople(2);
    keys("9.");
    press(Qt::Key_Down);
    EXPECT_EQ(cursor(), std::pair(1, 0));
    EXPECT_EQ(shown(0, 0), "9.");
    press(Qt::Key_Up);
    enter("3");
    ASSERT_EQ(stored().size(), 1U);
    EXPECT_EQ(stored().front().performed.reserve, Reserve{30});
}

TEST_F(ClassFloorTest, ACellIsStoredAsItIsLeftWhicheverWay)
{
    openPage();
    markPeople(2);
    keys("5");
    press(Qt::Key_Right);
    EXPECT_EQ(stored().size(), 1U);
    keys("6");
    press(Qt::Key_Tab);
    EXPECT_EQ(stored().size(), 2U);
    keys("7");
    QTest::mouseClick(grid->viewport(),
                      Qt::LeftButton,
                      Qt::NoModifier,
                      grid->visualRect(grid->model()->index(1, 0)).center());
    EXPECT_EQ(stored().size(), 3U);
    EXPECT_EQ(cursor(), std::pair(1, 0));
    keys("4");
    list()->setFocus();
    EXPECT_EQ(stored().size(), 4U);
    EXPECT_EQ(shown(1, 0), "60 × 4");
    EXPECT_EQ(shown(0, 2), "14 × 7");
    EXPECT_EQ(shown(0, 3), "14 kg × 10") << "a cell that was only passed stays unknown";
}

TEST_F(ClassFloorTest, ClosingTheWindowStoresWhatWasTyped)
{
    openPage();
    markPeople(1);
    keys("9.1");
    m_page->close();
    ASSERT_EQ(stored().size(), 1U);
    EXPECT_EQ(stored().front().performed.reps, 9);
}

TEST_F(ClassFloorTest, EscapeGivesUpWhatWasTyped)
{
    openPage();
    markPeople(1);
    keys("12");
    press(Qt::Key_Escape);
    press(Qt::Key_Down);
    press(Qt::Key_Right);
    EXPECT_EQ(stored().size(), 0U);
    EXPECT_EQ(shown(0, 0), "60 kg × 8");
}

TEST_F(ClassFloorTest, TypingOverADoneCellCorrectsItAndTakingBackRestoresIt)
{
    openPage();
    markPeople(1);
    enter("8");
    grid->goTo(grid->model()->index(0, 0));
    enter("10.1");
    ASSERT_EQ(stored().size(), 1U);
    EXPECT_EQ(stored().front().performed.reps, 10);
    EXPECT_EQ(storage::recentActions(*m_logbook, 1).front().kind, storage::ActionKind::CorrectSet);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(stored().front().performed.reps, 8);
    EXPECT_EQ(said(),
              "Taken back: a correction. Again Mara Linden, Barbell bench press, set 1: 60 kg × 8 "
              "(counted)");
}

TEST_F(ClassFloorTest, EnterOnADoneCellLeavesItAsItIs)
{
    openPage();
    markPeople(1);
    enter("8.3");
    const auto before = stored();
    grid->goTo(grid->model()->index(0, 0));
    enter("");
    EXPECT_EQ(stored(), before);
    EXPECT_EQ(cursor(), std::pair(0, 1));
}

TEST_F(ClassFloorTest, AStoreThatFailsKeepsTheTextAndChangesNothing)
{
    openPage();
    markPeople(1);
    reopen(storage::OpenMode::ReadOnly);
    grid->setFocus();
    grid->goTo(grid->model()->index(0, 0));
    const auto heard = said();
    enter("9");
    EXPECT_EQ(stored().size(), 0U);
    EXPECT_EQ(shown(0, 0), "9");
    EXPECT_FALSE(fault().empty());
    EXPECT_THAT(said(), ::testing::EndsWith(fault()));
    EXPECT_NE(said(), heard);
    EXPECT_EQ(cursor(), std::pair(0, 0));
    press(Qt::Key_Down);
    press(Qt::Key_Right);
    EXPECT_EQ(shown(0, 0), "9");
}

TEST_F(ClassFloorTest, WhatOthersTakeBackIsSeen)
{
    openPage();
    markPeople(1);
    enter("9");
    const auto last = storage::lastTakeable(*m_logbook);
    ASSERT_TRUE(last.has_value());
    m_notifier.announce(storage::takeBack(*m_logbook, *last, kClassMoment));
    EXPECT_EQ(shown(0, 0), "60 kg × 8");
}

TEST_F(ClassFloorTest, OnAnotherDayTypedSetsComeFromASheetAndTheFutureTakesNone)
{
    openPage();
    markPeople(1);
    today = kClassDay + 1; // the page still shows the class of yesterday
    enter("9");
    today = kClassDay;
    ASSERT_EQ(stored().size(), 1U);
    EXPECT_EQ(stored().front().performed.known, HowKnown::Sheet);
    today = kClassDay - 1;
    enter("9");
    today = kClassDay;
    EXPECT_EQ(stored().size(), 1U);
    EXPECT_EQ(shown(0, 1), "9");
}

} // namespace levelbar::ui::class_floor_log_test
