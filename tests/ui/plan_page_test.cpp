// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/class_plan_store.h"
#include "storage/company_store.h"
#include "storage/session_store.h"
#include "storage/station_store.h"
#include "storage/timetable_store.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/scripted_prompter.h"
#include "ui/plan/plan_page.h"

#include <QFile>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSpinBox>
#include <QTableWidget>
#include <QTemporaryDir>
#include <QtTest/QTest>

#include <gtest/gtest.h>

#include <optional>

namespace levelbar::ui::plan_page_test {
namespace {

using storage::ClassPlanStore;
using tests::benchSet;
using tests::kNow;

const Day kToday{20600}; // a Wednesday
const Day kMonday{20598};

class PlanPageTest : public testing::Test {
protected:
    void SetUp() override
    {
        bench = tests::exercise(logbook, "Barbell bench press").id;
        mara = tests::addMember(logbook, "M1", "Mara Linden");
        otto = tests::addMember(logbook, "M2", "Otto Fenn");
        for (int week = 4; week >= 1; --week) {
            tests::logSet(logbook, benchSet(logbook, mara, kToday - 7 * week, 1, 10));
        }
        storage::Action action(logbook, storage::ActionKind::EditTimetable, kNow);
        evening = storage::ClassStore::add(action, "Evening bars");
        for (const MemberId member : {mara, otto}) {
            storage::ClassStore::setMembership(action, evening, member, true);
        }
        ClassPlanStore::setItems(action, evening, {{{bench, 4, 8}, 1, {}, {}, {}}});
        WeeklySlot slot;
        slot.groupClass = evening;
        slot.weekday = 3;
        slot.start = TimeOfDay{18 * 60};
        storage::TimetableStore::add(action, slot);
        action.commit();
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

    [[nodiscard]] std::vector<ClassWeek> weeks() const
    {
        return ClassPlanStore(logbook).weeksOf(evening);
    }

    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    testing::StrictMock<ScriptedPrompter> prompter;
    ChangeNotifier notifier;
    Workspace workspace{logbook, notifier, {[] { return kNow; }, [] { return kToday; }}, prompter};
    QTemporaryDir folder;
    PlanPage page{workspace,
                  [this](QWidget*, const QString& proposal) { return folder.filePath(proposal); }};
    ExerciseId bench;
    MemberId mara;
    MemberId otto;
    ClassId evening;
};

TEST_F(PlanPageTest, ShowsTheNextMeetingsLoadsRacksAndMinutes)
{
    EXPECT_TRUE(part<QLabel>("planNext").text().startsWith(QStringLiteral("Next: Wednesday")));
    auto& targets = part<QTableWidget>("planTargets");
    ASSERT_EQ(targets.rowCount(), 2);
    EXPECT_TRUE(targets.item(0, 0)->text().contains(QStringLiteral("kg ×")));
    QStringList notes;
    for (int row = 0; row < part<QListWidget>("planNotes").count(); ++row) {
        notes << part<QListWidget>("planNotes").item(row)->text();
    }
    EXPECT_TRUE(notes.filter(QStringLiteral("Block 1: about")).size() == 1);
    EXPECT_TRUE(notes.filter(QStringLiteral("Rack 1: Mara Linden")).size() == 1);
}

TEST_F(PlanPageTest, WhoIsKeptApartAndWhoCanSpotIsSaidByKeyboardAndThePlanKeepsToIt)
{
    for (int week = 4; week >= 1; --week) {
        tests::logSet(logbook, benchSet(logbook, otto, kToday - 7 * week, 1, 10));
    }
    part<QSpinBox>("planRacks").setValue(1);
    QTest::keyClick(&part<QWidget>("planClass"), Qt::Key_R, Qt::ControlModifier);
    auto& spotters = part<QListWidget>("companySpotters");
    ASSERT_TRUE(spotters.isVisible());
    spotters.setCurrentRow(1);
    QTest::keyClick(&spotters, Qt::Key_Space);
    QTest::mouseClick(&part<QPushButton>("companyAdd"), Qt::LeftButton);
    const storage::CompanyStore store(logbook);
    EXPECT_EQ(store.all(), (RackCompany{{{mara, otto}}, {otto}}));
    const auto notes = [this] {
        QStringList all;
        for (int row = 0; row < part<QListWidget>("planNotes").count(); ++row) {
            all << part<QListWidget>("planNotes").item(row)->text();
        }
        return all.join(QLatin1Char('\n'));
    };
    ASSERT_TRUE(QTest::qWaitFor([&] {
        return notes().contains(QStringLiteral("that you want apart: 1"));
    })) << notes().toStdString();
    part<QSpinBox>("planRacks").setValue(2);
    EXPECT_FALSE(notes().contains(QStringLiteral("apart")));
    auto& pairs = part<QListWidget>("companyPairs");
    ASSERT_TRUE(QTest::qWaitFor([&] { return pairs.count() == 1; }));
    pairs.setFocus();
    QTest::keyClick(&pairs, Qt::Key_Delete);
    EXPECT_TRUE(store.all().apart.empty());
}

TEST_F(PlanPageTest, RacksThatAreGoneAreNotPlannedWith)
{
    storage::Action action(logbook, storage::ActionKind::EditStation, kNow);
    Rack racks;
    racks.name = "Racks";
    racks.count = 3;
    racks.id = storage::StationStore::put(action, racks);
    storage::StationStore::setGone(action, kToday, PieceKey::of(racks), 1);
    notifier.announce(action.commit());
    EXPECT_TRUE(QTest::qWaitFor([this] { return part<QSpinBox>("planRacks").value() == 2; }));
}

TEST_F(PlanPageTest, AClassWithoutATemplateIsPlannedByWhatItDidBefore)
{
    storage::Action action(logbook, storage::ActionKind::EditTemplate, kNow);
    ClassPlanStore::setItems(action, evening, {});
    const MeetingId last =
        storage::ClassStore::addMeeting(action, evening, kToday - 6, std::nullopt);
    DoneSet done = benchSet(logbook, otto, kToday - 6, 1, 10);
    done.meeting = last;
    storage::SetStore::add(action, done);
    notifier.announce(action.commit());
    ASSERT_TRUE(QTest::qWaitFor([this] {
        return part<QListWidget>("planWeeks").item(0)->text().contains(QStringLiteral("last 1"));
    }));
    EXPECT_EQ(part<QTableWidget>("planItems").rowCount(), 1);
    EXPECT_EQ(part<QTableWidget>("planTargets").columnCount(), 1);
    EXPECT_TRUE(ClassPlanStore(logbook).itemsOf(evening).empty()) << "only proposed";
    part<QPushButton>("planKeep").click();
    EXPECT_EQ(ClassPlanStore(logbook).itemsOf(evening).size(), 1U);
    EXPECT_EQ(part<QListWidget>("planWeeks").item(0)->text(), QStringLiteral("Template"));
}

TEST_F(PlanPageTest, AWeekIsMadeLighterCopiedAndSetBack)
{
    auto& list = part<QListWidget>("planWeeks");
    list.setCurrentRow(2);
    part<QPushButton>("planLighter").click();
    EXPECT_EQ(weeks(), (std::vector<ClassWeek>{{kMonday + 7, WeekKind::Lighter, "", {}}}));
    EXPECT_TRUE(part<QLabel>("planChanges")
                    .text()
                    .contains(QStringLiteral("2 × 8 with 4 left, was 4 × 8 with 2 left")));
    part<QPushButton>("planCopy").click();
    ASSERT_EQ(weeks().size(), 2U);
    EXPECT_EQ(weeks()[1].monday, kMonday + 14);
    EXPECT_EQ(weeks()[1].items.size(), 1U);
    EXPECT_EQ(list.currentRow(), 3) << "on the copy, to change one thing";
    part<QTableWidget>("planItems").item(0, 2)->setText(QStringLiteral("5"));
    part<QPushButton>("planKeep").click();
    EXPECT_EQ(weeks()[1].items[0].what.sets, 5);
    part<QPushButton>("planAsTemplate").click();
    EXPECT_EQ(weeks().size(), 1U);
}

TEST_F(PlanPageTest, ASheetGetsANumberAndIsTextNotAPicture)
{
    part<QPushButton>("planPrint").click();
    const auto sheet = storage::SessionStore(logbook).sheet(storage::SheetId{1});
    ASSERT_TRUE(sheet.has_value());
    ASSERT_EQ(sheet->rows.size(), 2U);
    EXPECT_EQ(sheet->rows[0], (storage::PrintedRow{mara, 1}));
    EXPECT_EQ(part<QLabel>("planSaid").text(), QStringLiteral("Sheet 1 is saved."));
    QFile file(folder.filePath(QStringLiteral("Evening bars 2026-05-27.pdf")));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray bytes = file.readAll();
    EXPECT_TRUE(bytes.startsWith("%PDF"));
    EXPECT_TRUE(bytes.contains("/FontFile"));
    EXPECT_FALSE(bytes.contains("/Subtype /Image"));
}

} // namespace
} // namespace levelbar::ui::plan_page_test
