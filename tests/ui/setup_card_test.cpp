// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/gym_store.h"
#include "storage/history_reader.h"
#include "storage/scale_store.h"
#include "storage/setup_store.h"
#include "storage/station_store.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/scripted_prompter.h"
#include "ui/gym/station_panel.h"
#include "ui/pages/push_up_panel.h"
#include "ui/pages/setup_card_panel.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSpinBox>
#include <QTableView>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace levelbar::ui::setup_card_test {
namespace {

using tests::exercise;
using tests::kNow;

const Day kToday{20600};

class SetupTest : public testing::Test {
protected:
    SetupTest()
    {
        storage::Action action(logbook, storage::ActionKind::AddMember, kNow);
        Member person;
        person.code = "M1";
        person.sex = Sex::Female;
        person.statureTenthMillimetres = 16500;
        person.intakeMass = Mass::ofKilograms(68);
        member = storage::MemberStore::add(action, person);
        action.commit();
    }

    void addRack(const char* name, int lowest)
    {
        storage::Action action(logbook, storage::ActionKind::EditStation, kNow);
        Rack rack = assumedRack();
        rack.name = name;
        rack.holes.lowest = Length::ofMillimetres(lowest);
        storage::StationStore::put(action, rack);
        action.commit();
    }

    template <typename T> static T* part(QWidget& widget, const char* name)
    {
        return widget.findChild<T*>(QLatin1String(name));
    }

    [[nodiscard]] std::optional<SetupCard> card() const
    {
        return storage::SetupStore(logbook).find(member,
                                                 exercise(logbook, "Barbell bench press").id);
    }

    void showCard()
    {
        history = storage::bareHistoryOf(logbook, member).value();
        library = storage::LibraryStore(logbook).all();
        panel.show(history, library, exercise(logbook, "Barbell bench press").id);
    }

    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    ChangeNotifier notifier;
    testing::StrictMock<ScriptedPrompter> prompter;
    Workspace workspace{
        logbook, notifier, Clock{[] { return kNow; }, [] { return kToday; }}, prompter};
    MemberId member;
    MemberHistory history;
    Library library;
    SetupCardPanel panel{workspace};
};

TEST_F(SetupTest, HolesAreProposedAndConfirmedWithOneKey)
{
    addRack("Rack", 300);
    showCard();
    auto* lines = part<QListWidget>(panel, "setupLines");
    ASSERT_EQ(lines->count(), 3);
    // 1.02 m by the notes' geometry: hole 15 of 5 cm from 30 cm is 100 cm, hole 16 is 105.
    EXPECT_TRUE(lines->item(0)->text().contains(QStringLiteral("proposed")));
    EXPECT_TRUE(lines->item(0)->text().startsWith(QStringLiteral("Hooks: hole 15 (100 cm)")))
        << lines->item(0)->text().toStdString();
    EXPECT_FALSE(card());
    QTest::keyClick(lines, Qt::Key_Return);
    ASSERT_TRUE(card());
    EXPECT_TRUE(card()->isConfirmed);
    EXPECT_EQ(card()->hookHole, 15);
    EXPECT_EQ(card()->benchAngle, 0);
    EXPECT_TRUE(card()->rack);
    EXPECT_FALSE(lines->item(0)->text().contains(QStringLiteral("proposed")));
}

TEST_F(SetupTest, PlusAndMinusChangeTheChosenLine)
{
    addRack("Rack", 300);
    showCard();
    auto* lines = part<QListWidget>(panel, "setupLines");
    QTest::keyClick(lines, Qt::Key_Plus);
    EXPECT_EQ(card()->hookHole, 16);
    EXPECT_FALSE(card()->isConfirmed);
    lines->setCurrentRow(1);
    const int pin = card()->safetyHole.value();
    QTest::keyClick(lines, Qt::Key_Minus);
    EXPECT_EQ(card()->safetyHole, pin - 1);
    EXPECT_EQ(lines->currentRow(), 1) << "the line stays chosen";
    part<QLineEdit>(panel, "setupGrip")->setText(QStringLiteral("ring"));
    QTest::keyClick(part<QLineEdit>(panel, "setupGrip"), Qt::Key_Return);
    EXPECT_EQ(card()->gripMark, "ring");
    EXPECT_EQ(card()->hookHole, 16);
}

TEST_F(SetupTest, OnAnotherRackTheHoleIsTheOneAtThatHeight)
{
    addRack("Rack", 300);
    addRack("Low rack", 200);
    showCard();
    QTest::keyClick(part<QListWidget>(panel, "setupLines"), Qt::Key_Return);
    auto* racks = part<QComboBox>(panel, "setupRack");
    racks->setCurrentIndex(1);
    Q_EMIT racks->activated(1);
    const QString text = part<QListWidget>(panel, "setupLines")->item(0)->text();
    EXPECT_TRUE(text.startsWith(QStringLiteral("Hooks: hole 17 (100 cm)"))) << text.toStdString();
    EXPECT_EQ(part<QListWidget>(panel, "setupLines")->item(0)->toolTip(),
              QStringLiteral("as high as hole 15 of Rack"));
}

TEST_F(SetupTest, WhereNothingIsSetUpThereIsNoCard)
{
    history = storage::bareHistoryOf(logbook, member).value();
    library = storage::LibraryStore(logbook).all();
    panel.show(history, library, exercise(logbook, "Plank").id);
    EXPECT_TRUE(panel.isHidden());
}

TEST_F(SetupTest, PushUpsAreSaidInKilogramsAndAScaleReadingIsKept)
{
    addRack("Rack", 300);
    storage::Action action(logbook, storage::ActionKind::LogSet, kNow);
    DoneSet set;
    set.member = member;
    set.exercise = exercise(logbook, "Incline push-up").id;
    set.performed.day = kToday - 2;
    set.performed.reps = 11;
    set.performed.reserve = Reserve{0};
    set.hookHole = 9;
    storage::SetStore::add(action, set);
    action.commit();
    showCard();
    PushUpPanel pushUps(workspace);
    pushUps.show(history, library);
    pushUps.resize(600, 500);
    static_cast<QWidget&>(pushUps).show();
    const QString next = part<QLabel>(pushUps, "pushUpNext")->text();
    EXPECT_TRUE(next.startsWith(QStringLiteral("Hole 9 (70 cm): about "))) << next.toStdString();
    EXPECT_TRUE(part<QLabel>(pushUps, "pushUpOthers")->text().contains(QStringLiteral("Floor")));
    part<QLineEdit>(pushUps, "scaleLockedOut")->setText(QStringLiteral("46"));
    QTest::keyClicks(part<QLineEdit>(pushUps, "scaleAtChest"), QStringLiteral("51,5"));
    QTest::keyClick(part<QLineEdit>(pushUps, "scaleAtChest"), Qt::Key_Return);
    ASSERT_EQ(storage::ScaleStore(logbook).ofMember(member).size(), 1U);
    part<QLineEdit>(pushUps, "scaleLockedOut")->setText(QStringLiteral("4"));
    part<QLineEdit>(pushUps, "scaleAtChest")->setText(QStringLiteral("5"));
    QTest::mouseClick(part<QPushButton>(pushUps, "scaleAdd"), Qt::LeftButton);
    EXPECT_TRUE(part<QLabel>(pushUps, "pushUpLine")->text().startsWith(QStringLiteral("Not kept")));
    EXPECT_EQ(storage::ScaleStore(logbook).ofMember(member).size(), 1U);
}

TEST_F(SetupTest, RacksAndBenchesAreAddedAndEditedInPlace)
{
    StationPanel stations(workspace);
    auto* name = part<QLineEdit>(stations, "stationName");
    QTest::keyClicks(name, QStringLiteral("Squat rack"));
    QTest::keyClick(name, Qt::Key_Return);
    auto* model = part<QTableView>(stations, "stationTable")->model();
    const QAbstractItemModelTester tester(model,
                                          QAbstractItemModelTester::FailureReportingMode::Warning);
    ASSERT_EQ(model->rowCount(), 1);
    const auto type = [model](int column, const char* text) {
        return model->setData(model->index(0, column), QLatin1String(text));
    };
    EXPECT_TRUE(type(StationModel::LowestColumn, "312.5"));
    EXPECT_TRUE(type(StationModel::RoomColumn, "Hall"));
    EXPECT_TRUE(type(StationModel::CountColumn, "4"));
    EXPECT_TRUE(type(StationModel::GoneColumn, "1"));
    EXPECT_FALSE(type(StationModel::PitchColumn, "x"));
    EXPECT_FALSE(part<QLabel>(stations, "stationLine")->text().isEmpty());
    const Stations stored = storage::StationStore(logbook).all();
    EXPECT_EQ(stored.racks.front().holes.lowest, Length{3125});
    EXPECT_EQ(stored.racks.front().count, 4);
    EXPECT_EQ(stored.rooms.front().name, "Hall");
    EXPECT_EQ(storage::StationStore(logbook).goneOn(kToday).size(), 1U);
    EXPECT_TRUE(type(StationModel::RoomColumn, ""));
    EXPECT_TRUE(storage::StationStore(logbook).all().rooms.empty());
}

} // namespace
} // namespace levelbar::ui::setup_card_test
