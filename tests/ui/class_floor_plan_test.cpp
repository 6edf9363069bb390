// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/class_floor_fixture.h"
#include "ui/floor/load_steps.h"

#include <QComboBox>
#include <QDateEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSpinBox>

namespace levelbar::ui::class_floor_plan_test {

namespace {

Mass kilograms(const char* number)
{
    return *parseMass(number, MassUnit::Kilogram);
}

} // namespace

TEST(LoadStepsTest, FollowTheImplementAndTheUnit)
{
    // Common practice, no source: what racks usually hold.
    EXPECT_EQ(steppedLoad(kilograms("60"), Implement::Barbell, 1), kilograms("62.5"));
    EXPECT_EQ(steppedLoad(kilograms("60"), Implement::Barbell, -1), kilograms("57.5"));
    EXPECT_EQ(steppedLoad(kilograms("8"), Implement::Dumbbell, 1), kilograms("9"));
    EXPECT_EQ(steppedLoad(kilograms("10"), Implement::Dumbbell, 1), kilograms("12"));
    EXPECT_EQ(steppedLoad(kilograms("12"), Implement::Dumbbell, -1), kilograms("10"));
    EXPECT_EQ(steppedLoad(kilograms("10"), Implement::Dumbbell, -1), kilograms("9"));
    EXPECT_EQ(steppedLoad(kilograms("1"), Implement::Barbell, -1), kilograms("0"));
    EXPECT_EQ(steppedLoad(*parseMass("135", MassUnit::Pound), Implement::Barbell, 1),
              *parseMass("140", MassUnit::Pound));
}

TEST(LoadStepsTest, GoOverWhatTheGymHas)
{
    Kit kit;
    kit.bars = {{"Bar", kilograms("20"), 1}};
    kit.plates = {{kilograms("10"), 2}, {kilograms("1.25"), 2}};
    kit.handWeights = {{Implement::Dumbbell, kilograms("8"), 1},
                       {Implement::Dumbbell, kilograms("14"), 2}};
    kit.stackStep = kilograms("5");
    Exercise lift;
    lift.implement = Implement::Barbell;
    EXPECT_EQ(steppedLoad(kilograms("22.5"), kit, lift, 1), kilograms("40"));
    EXPECT_EQ(steppedLoad(kilograms("42.5"), kit, lift, 1), kilograms("42.5")) << "the heaviest";
    EXPECT_EQ(steppedLoad(kilograms("20"), kit, lift, -1), kilograms("20")) << "the lightest";
    lift.implement = Implement::Dumbbell;
    EXPECT_EQ(steppedLoad(kilograms("10"), kit, lift, 1), kilograms("14"));
    EXPECT_EQ(steppedLoad(kilograms("14"), kit, lift, -1), kilograms("14")) << "one 8 is no pair";
    lift.implement = Implement::BodyWeight;
    lift.load = LoadKind::Added;
    EXPECT_EQ(steppedLoad(kilograms("5"), kit, lift, -1), kilograms("0"));
    kit.isAssumed = true;
    lift.implement = Implement::Barbell;
    EXPECT_EQ(steppedLoad(kilograms("60"), kit, lift, 1), kilograms("62.5"));
}

TEST(LoadStepsTest, ATypedLoadIsReadWithItsUnit)
{
    EXPECT_EQ(*parseTypedLoad("62.5", MassUnit::Kilogram), kilograms("62.5"));
    EXPECT_EQ(*parseTypedLoad("62,5 kg", MassUnit::Pound), kilograms("62.5"));
    EXPECT_EQ(*parseTypedLoad("135 LB", MassUnit::Kilogram), *parseMass("135", MassUnit::Pound));
    EXPECT_EQ(*parseTypedLoad("135", MassUnit::Pound), *parseMass("135", MassUnit::Pound));
    for (const char* bad : {"", "kg", "62.5.1", "60 st", "-5", "1001", "6O", "60 kg 5"}) {
        EXPECT_FALSE(parseTypedLoad(bad, MassUnit::Kilogram).has_value()) << bad;
    }
}

TEST_F(ClassFloorTest, ALoadTypedInPoundsIsKeptAsTyped)
{
    openPage();
    markPeople(1);
    enter("l135 lb");
    EXPECT_EQ(shown(0, 0), "135 lb × 8");
    EXPECT_EQ(shown(0, 1), "60 kg × 8") << "only the cell that was meant";
    EXPECT_EQ(cursor(), std::pair(0, 0)) << "the reps come next";
    enter("5");
    reopen();
    ASSERT_EQ(stored().size(), 1U);
    EXPECT_EQ(stored().front().performed.load, *parseMass("135", MassUnit::Pound));
    EXPECT_EQ(shown(0, 0), "135 lb × 5");
}

TEST_F(ClassFloorTest, PlusAndMinusStepThePlannedLoadAndCorrectADoneOne)
{
    openPage();
    markPeople(1);
    keys("++-");
    EXPECT_EQ(shown(0, 0), "62.5 kg × 8");
    enter("");
    EXPECT_EQ(shown(0, 0), "62.5 × 8");
    press(Qt::Key_Left);
    press(Qt::Key_Left);
    keys("+");
    ASSERT_EQ(stored().size(), 1U);
    EXPECT_EQ(stored().front().performed.load, kilograms("65"));
    EXPECT_EQ(stored().front().performed.known, HowKnown::Accepted) << "the reps were not counted";
}

TEST_F(ClassFloorTest, AnUnreadableLoadStaysWithASentence)
{
    openPage();
    markPeople(1);
    enter("l60 st");
    EXPECT_THAT(fault(), ::testing::HasSubstr("'60 st' is not a load"));
    EXPECT_EQ(shown(0, 0), "load 60 st");
    press(Qt::Key_Escape);
    EXPECT_EQ(shown(0, 0), "60 kg × 8");
}

TEST_F(ClassFloorTest, SomebodyNewNeedsALoadAndRepsBeforeAnythingIsStored)
{
    openPage();
    markPeople(3);
    grid->goTo(grid->model()->index(2, 0));
    EXPECT_EQ(shown(2, 0), "new × ?");
    enter("");
    EXPECT_THAT(fault(), ::testing::HasSubstr("no reps"));
    enter("8");
    EXPECT_THAT(fault(), ::testing::HasSubstr("no load yet"));
    EXPECT_EQ(shown(2, 0), "8");
    EXPECT_EQ(stored().size(), 0U);
    enter("l40");
    EXPECT_EQ(shown(2, 0), "8") << "the reps are still there";
    EXPECT_EQ(shown(2, 1), "40 kg × ?") << "nothing else to go by: the other set takes it too";
    enter("");
    ASSERT_EQ(stored().size(), 1U);
    EXPECT_EQ(stored().front().performed.reps, 8);
    EXPECT_EQ(stored().front().performed.load, kilograms("40"));
}

TEST_F(ClassFloorTest, TimedSetsAreWrittenInSecondsAndBodyWeightWithoutALoad)
{
    const ExerciseId plank = exercise("Plank");
    const ExerciseId pushUp = exercise("Push-up");
    {
        storage::BulkWrite write(*m_logbook, "test", kClassMoment);
        storage::ClassStore::setTemplate(write, evening, {{plank, 1, {}}, {pushUp, 1, 12}});
        write.commit();
    }
    openPage();
    markPeople(1);
    enter("45,5");
    enter("");
    const auto sets = stored();
    ASSERT_EQ(sets.size(), 2U);
    EXPECT_EQ(sets[0].performed.secondsTenths, 455);
    EXPECT_FALSE(sets[0].performed.reps.has_value());
    EXPECT_EQ(sets[1].performed.reps, 12);
    EXPECT_EQ(shown(0, 0), "45.5 s");
    EXPECT_EQ(shown(0, 1), "12 reps");
}

TEST_F(ClassFloorTest, UnmarkingTakesThePlanAwayButNeverADoneSet)
{
    openPage();
    markPeople(2);
    enter("8");
    list()->setFocus();
    QTest::keyClick(list(), Qt::Key_Home);
    QTest::keyClick(list(), Qt::Key_Space);
    EXPECT_THAT(said(), ::testing::StartsWith("Mara Linden has done sets here"));
    EXPECT_EQ(grid->model()->rowCount(), 2);
    QTest::keyClick(list(), Qt::Key_Down);
    QTest::keyClick(list(), Qt::Key_Return);
    EXPECT_EQ(grid->model()->rowCount(), 1);
    EXPECT_EQ(planned().size(), 4U);
    EXPECT_EQ(stored().size(), 1U);
}

TEST_F(ClassFloorTest, AnybodyOnTheRosterIsFoundByTyping)
{
    {
        storage::BulkWrite write(*m_logbook, "test", kClassMoment);
        add(write, "G-77", "Pia Sund");
        write.commit();
    }
    openPage();
    EXPECT_EQ(list()->model()->rowCount(), 3);
    auto* filter = part<QLineEdit>("attendanceFilter");
    filter->setFocus();
    QTest::keyClicks(filter, QStringLiteral("g-7"));
    EXPECT_EQ(list()->model()->rowCount(), 1);
    QTest::keyClick(filter, Qt::Key_Return);
    EXPECT_TRUE(filter->text().isEmpty());
    EXPECT_EQ(list()->model()->rowCount(), 4) << "whoever came is listed with the class";
    EXPECT_EQ(grid->model()->rowCount(), 1);
    EXPECT_EQ(part<QLabel>("attendanceCount")->text().toStdString(), "1 came");
}

TEST_F(ClassFloorTest, AClassWithoutATemplateIsProposedOneFromItsLastMeetings)
{
    {
        storage::BulkWrite write(*m_logbook, "test", kClassMoment);
        storage::ClassStore::setTemplate(write, evening, {});
        const MeetingId last =
            storage::ClassStore::addMeeting(write, evening, kClassDay - 7, std::nullopt);
        DoneSet set = storage::SetStore(*m_logbook).ofMember(mara).front();
        set.meeting = last;
        storage::SetStore::update(write, set);
        write.commit();
    }
    openPage();
    EXPECT_THAT(part<QLabel>("floorHint")->text().toStdString(),
                ::testing::HasSubstr("proposed from the last 1"));
    markPeople(1);
    EXPECT_EQ(planned().size(), 1U);
    EXPECT_TRUE(storage::ClassStore(*m_logbook).templateOf(evening).empty()) << "not kept yet";
    part<QPushButton>("floorTemplate")->click();
    part<QPushButton>("templateKeep")->click();
    EXPECT_EQ(storage::ClassStore(*m_logbook).templateOf(evening).size(), 1U);
    EXPECT_TRUE(part<QLabel>("floorHint")->text().isEmpty());
}

TEST_F(ClassFloorTest, TheTemplateIsChangedByKeysAndThePlanFollowsButDoneSetsStay)
{
    openPage();
    markPeople(1);
    enter("8");
    part<QPushButton>("floorTemplate")->click();
    auto* filter = part<QLineEdit>("templateFilter");
    filter->setFocus();
    QTest::keyClicks(filter, QStringLiteral("push-up"));
    QTest::keyClick(filter, Qt::Key_Return);
    auto* items = part<QListWidget>("templateList");
    ASSERT_EQ(items->count(), 3);
    auto* sets = part<QSpinBox>("templateSets");
    sets->setFocus();
    QTest::keyClick(sets, Qt::Key_Up);
    items->setFocus();
    QTest::keyClick(items, Qt::Key_Up, Qt::AltModifier);
    QTest::keyClick(items, Qt::Key_Home);
    QTest::keyClick(items, Qt::Key_Delete); // the bench press, of which one set is done
    part<QPushButton>("templateKeep")->click();

    const auto kept = storage::ClassStore(*m_logbook).templateOf(evening);
    ASSERT_EQ(kept.size(), 2U);
    EXPECT_EQ(kept[0].sets, 4);
    EXPECT_EQ(kept[1].exercise, oneArm);
    EXPECT_EQ(stored().size(), 1U);
    // Four of the new one, left and right of the other, and the one that the done set answers.
    EXPECT_EQ(planned().size(), 7U);
    grid->setFocus();
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(storage::ClassStore(*m_logbook).templateOf(evening).size(), 2U);
    EXPECT_EQ(planned().size(), 4U);
}

TEST_F(ClassFloorTest, ANewClassIsMadeOnThePage)
{
    openPage();
    part<QPushButton>("floorNewClass")->click();
    auto* name = part<QLineEdit>("floorNewClassName");
    QTest::keyClicks(name, QStringLiteral("  Noon mix "));
    QTest::keyClick(name, Qt::Key_Return);
    EXPECT_TRUE(storage::ClassStore(*m_logbook).find("Noon mix").has_value());
    EXPECT_EQ(part<QComboBox>("floorClass")->currentText().toStdString(), "Noon mix");
    EXPECT_THAT(part<QLabel>("floorHint")->text().toStdString(),
                ::testing::HasSubstr("no template yet"));
}

TEST_F(ClassFloorTest, EveryCellSaysWhoWhatWhichSideAndWhatIsKnown)
{
    openPage();
    markPeople(1);
    enter("9.2");
    const auto spoken = [&](int column) {
        return grid->model()
            ->index(0, column)
            .data(Qt::AccessibleTextRole)
            .toString()
            .toStdString();
    };
    EXPECT_EQ(spoken(0),
              "Mara Linden, Barbell bench press, set 1. Planned 60 kg × 8. "
              "Done 60 kg × 9, 2 in reserve, counted.");
    EXPECT_EQ(spoken(3),
              "Mara Linden, Single-arm dumbbell bench press, set 1, right. Planned 14 kg × 10, "
              "right first. Not known yet.");
}

TEST_F(ClassFloorTest, AnotherDayShowsItsOwnMeeting)
{
    openPage();
    markPeople(1);
    enter("9");
    part<QDateEdit>("floorDay")->setDate(QDate(2026, 11, 24));
    EXPECT_EQ(grid->model()->rowCount(), 0);
    part<QDateEdit>("floorDay")->setDate(QDate(2026, 11, 25));
    EXPECT_EQ(shown(0, 0), "60 × 9");
}

TEST_F(ClassFloorTest, ThePageIsPaintedWithThirtyPeopleAndFollowsTheCursor)
{
    {
        storage::BulkWrite write(*m_logbook, "test", kClassMoment);
        storage::ClassStore::setTemplate(
            write, evening, {{bench, 5, {}}, {exercise("Floor press"), 4, {}}, {oneArm, 3, {}}});
        for (int person = 0; person < 27; ++person) {
            const std::string code = "T" + std::to_string(100 + person);
            storage::ClassStore::setMembership(
                write, evening, add(write, code.c_str(), ("Person " + code).c_str()), true);
        }
        write.commit();
    }
    openPage();
    markPeople(30);
    ASSERT_EQ(grid->model()->rowCount(), 30);
    ASSERT_EQ(grid->model()->columnCount(), 15);
    for (int step = 0; step < 14; ++step) {
        press(Qt::Key_Right);
    }
    press(Qt::Key_PageDown);
    EXPECT_TRUE(grid->viewport()->rect().contains(grid->visualRect(grid->currentIndex())));
    m_page->resize(900, 500);
    QCoreApplication::processEvents();
    EXPECT_TRUE(grid->viewport()->rect().contains(grid->visualRect(grid->currentIndex())));
    EXPECT_GE(grid->columnWidth(0),
              grid->fontMetrics().horizontalAdvance(QStringLiteral("62.5 kg × 12")));
    const QImage painted = m_page->grab().toImage();
    int changes = 0;
    for (int x = 1; x < painted.width(); ++x) {
        changes +=
            painted.pixel(x, painted.height() / 2) != painted.pixel(x - 1, painted.height() / 2);
    }
    EXPECT_GT(changes, 20) << "the page is not blank";
}

} // namespace levelbar::ui::class_floor_plan_test
