// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/answered_plans.h"
#include "storage/today_store.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/scripted_prompter.h"
#include "ui/floor/floor_writer.h"
#include "ui/today/today_page.h"

#include <QAbstractButton>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QListWidget>
#include <QSignalSpy>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace levelbar::ui::today_page_test {
namespace {

using storage::TodayStore;
using tests::benchSet;
using tests::kNow;
using tests::logSet;

const Day kToday{20600}; // 27 May 2026

class TodayPageTest : public testing::Test {
protected:
    // Everything the test stores must be there before.
    TodayPage& open()
    {
        m_review.emplace(logbook, notifier, workspace.clock);
        m_page.emplace(workspace, *m_review);
        m_page->resize(1200, 700);
        m_page->show();
        m_review->request();
        EXPECT_TRUE(QTest::qWaitFor([this] { return m_review->current() != nullptr; }, 20'000));
        return *m_page;
    }

    template <typename T> T& part(const char* name)
    {
        auto* found = m_page->findChild<T*>(QLatin1String(name));
        EXPECT_NE(found, nullptr) << name;
        return *found;
    }

    [[nodiscard]] QListView& lines() { return part<QListView>("todayLines"); }

    [[nodiscard]] QString lineText(int row)
    {
        return lines().model()->index(row, 0).data(Qt::AccessibleTextRole).toString();
    }

    MemberId addPained(const std::string& code)
    {
        const MemberId member = tests::addMember(logbook, code);
        DoneSet set = benchSet(logbook, member, kToday - 3, 1, 8);
        set.performed.pain = 5;
        logSet(logbook, set);
        return member;
    }

    void type(QLineEdit& edit, const QString& text)
    {
        edit.setText(text);
        QTest::keyClick(&edit, Qt::Key_Return);
    }

    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    testing::StrictMock<ScriptedPrompter> prompter;
    ChangeNotifier notifier;
    Workspace workspace{logbook, notifier, {[] { return kNow; }, [] { return kToday; }}, prompter};

private:
    std::optional<BackgroundReview> m_review;
    std::optional<TodayPage> m_page;
};

TEST_F(TodayPageTest, AnEmptyLogbookSaysWhatToDo)
{
    open();
    EXPECT_TRUE(part<QLabel>("todaySummary").text().startsWith(QStringLiteral("Nobody is in")));
    EXPECT_TRUE(part<QListWidget>("todayMeetings")
                    .item(0)
                    ->text()
                    .startsWith(QStringLiteral("No class today")));
    EXPECT_TRUE(
        part<QListWidget>("followUpList").item(0)->text().startsWith(QStringLiteral("None.")));
    EXPECT_TRUE(
        part<QLabel>("todayHowRight").text().startsWith(QStringLiteral("Nothing to judge")));
}

TEST_F(TodayPageTest, ALineSaysWhyAndWhatToDoAndEnterOpensThePersonThere)
{
    const MemberId member = addPained("M1");
    TodayPage& page = open();
    ASSERT_EQ(lines().model()->rowCount(), 1);
    EXPECT_EQ(lineText(0),
              QStringLiteral("M1. Pain 5 of 10 in Barbell bench press on 24 May; sets with pain in "
                             "four weeks: 1. Ask before the first set; swap Barbell bench press if "
                             "it still hurts."));
    QSignalSpy opened(&page, &TodayPage::opened);
    QTest::keyClick(&lines(), Qt::Key_Return);
    ASSERT_EQ(opened.count(), 1);
    EXPECT_EQ(opened[0][0].value<MemberId>(), member);
    EXPECT_EQ(opened[0][1].value<ExerciseId>(), tests::exercise(logbook, "Barbell bench press").id);
}

TEST_F(TodayPageTest, SevenLinesThenHowManyMoreThenAll)
{
    for (int i = 1; i <= 9; ++i) {
        addPained("M" + std::to_string(i));
    }
    open();
    EXPECT_EQ(lines().model()->rowCount(), 8);
    EXPECT_EQ(lineText(7), QStringLiteral("2 more (Enter)"));
    lines().setCurrentIndex(lines().model()->index(7, 0));
    QTest::keyClick(&lines(), Qt::Key_N); // nothing to put aside there
    EXPECT_FALSE(part<QWidget>("todayEditor").isVisible());
    QTest::keyClick(&lines(), Qt::Key_Return);
    EXPECT_EQ(lines().model()->rowCount(), 9);
    EXPECT_EQ(lines().currentIndex().row(), 7);
}

TEST_F(TodayPageTest, NotBeforeHidesUntilTheDayAndIsTakenBack)
{
    const MemberId member = addPained("M1");
    open();
    QTest::keyClick(&lines(), Qt::Key_N);
    auto& typed = part<QLineEdit>("todayTyped");
    EXPECT_TRUE(typed.isVisible());
    EXPECT_EQ(typed.text(), QStringLiteral("14"));
    type(typed, QStringLiteral("31 May"));
    EXPECT_TRUE(TodayStore(logbook).settled().empty());
    EXPECT_TRUE(part<QLabel>("todayRefusal").text().startsWith(QStringLiteral("Not kept: ")));
    type(typed, QStringLiteral("10"));
    const auto settled = TodayStore(logbook).settled();
    ASSERT_EQ(settled.size(), 1U);
    EXPECT_EQ(settled[0].member, member);
    EXPECT_EQ(settled[0].until, kToday + 10);
    EXPECT_EQ(settled[0].evidence, (EvidenceMark{kToday - 3, 1}));
    EXPECT_EQ(lines().model()->rowCount(), 0);
    EXPECT_FALSE(typed.isVisible());
    EXPECT_TRUE(part<QLabel>("todaySummary").text().endsWith(QStringLiteral("1 put aside.")));
    notifier.announce(storage::takeBack(logbook, *storage::lastTakeable(logbook), kNow));
    EXPECT_EQ(lines().model()->rowCount(), 1);
}

TEST_F(TodayPageTest, SettledNeedsAReasonAndEscapeLeavesItAll)
{
    addPained("M1");
    open();
    QTest::keyClick(&lines(), Qt::Key_S);
    auto& typed = part<QLineEdit>("todayTyped");
    type(typed, QStringLiteral("  "));
    EXPECT_TRUE(TodayStore(logbook).settled().empty());
    QTest::keyClick(&typed, Qt::Key_Escape);
    EXPECT_FALSE(typed.isVisible());
    EXPECT_EQ(lines().model()->rowCount(), 1);
    QTest::keyClick(&lines(), Qt::Key_S);
    type(typed, QStringLiteral("Physio saw it"));
    ASSERT_EQ(TodayStore(logbook).settled().size(), 1U);
    EXPECT_EQ(TodayStore(logbook).settled()[0].because, "Physio saw it");
    EXPECT_EQ(lines().model()->rowCount(), 0);
}

TEST_F(TodayPageTest, WhatIsPutAsideIsFoundAndShownAgain)
{
    addPained("M1");
    open();
    QTest::keyClick(&lines(), Qt::Key_S);
    type(part<QLineEdit>("todayTyped"), QStringLiteral("Physio saw it"));
    QTest::keyClick(&lines(), Qt::Key_A);
    auto& aside = part<QListWidget>("todayAsideList");
    EXPECT_TRUE(aside.isVisible());
    ASSERT_EQ(aside.count(), 1);
    EXPECT_EQ(aside.item(0)->text(), QStringLiteral("M1. Pain: settled on 27 May: Physio saw it."));
    QTest::keyClick(&aside, Qt::Key_Return);
    EXPECT_EQ(lines().model()->rowCount(), 1);
    EXPECT_TRUE(TodayStore(logbook).settled().empty());
    QTest::keyClick(&aside, Qt::Key_Escape);
    EXPECT_FALSE(aside.isVisible());
}

TEST_F(TodayPageTest, AFollowUpIsWrittenAndTickedByKey)
{
    open();
    auto& due = part<QLineEdit>("followUpDue");
    due.setText(QStringLiteral("0"));
    type(part<QLineEdit>("followUpText"), QStringLiteral("Order collars"));
    EXPECT_TRUE(TodayStore(logbook).followUps(kToday).empty());
    EXPECT_TRUE(part<QLabel>("followUpRefusal").isVisible());
    due.setText(QStringLiteral("3"));
    part<QLineEdit>("followUpOwner").setText(QStringLiteral("AB"));
    type(part<QLineEdit>("followUpText"), QStringLiteral("Order collars"));
    auto& list = part<QListWidget>("followUpList");
    ASSERT_EQ(list.count(), 1);
    EXPECT_EQ(list.item(0)->text(), QStringLiteral("Order collars (AB, due 30 May)"));
    list.setCurrentRow(0);
    QTest::keyClick(&list, Qt::Key_Space);
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return list.item(0)->text().endsWith(QStringLiteral("done 27 May)")); }, 5'000));
    EXPECT_EQ(TodayStore(logbook).followUps(kToday)[0].done, kToday);
    QTest::keyClick(&list, Qt::Key_Space); // not done after all
    EXPECT_FALSE(TodayStore(logbook).followUps(kToday)[0].done);
}

TEST_F(TodayPageTest, AFollowUpAboutAPersonBeginsOnTheirLine)
{
    const MemberId member = addPained("M1");
    open();
    QTest::keyClick(&lines(), Qt::Key_F);
    EXPECT_TRUE(part<QLabel>("followUpPerson").isVisible());
    type(part<QLineEdit>("followUpText"), QStringLiteral("Ring the physio"));
    ASSERT_EQ(TodayStore(logbook).followUps(kToday).size(), 1U);
    EXPECT_EQ(TodayStore(logbook).followUps(kToday)[0].member, member);
    EXPECT_EQ(part<QListWidget>("followUpList").item(0)->text(),
              QStringLiteral("M1: Ring the physio (due 3 Jun)"));
    EXPECT_FALSE(part<QLabel>("followUpPerson").isVisible());
}

TEST_F(TodayPageTest, TheBriefIsOfTheNextClassAndNamesWhoHadPainAndWhatIsDue)
{
    const MemberId member = addPained("M1");
    {
        storage::Action action(logbook, storage::ActionKind::EditClass, kNow);
        const ClassId early = storage::ClassStore::add(action, "Early");
        const ClassId late = storage::ClassStore::add(action, "Late");
        const MeetingId first =
            storage::ClassStore::addMeeting(action, early, kToday, TimeOfDay{480});
        storage::ClassStore::addMeeting(action, late, kToday, TimeOfDay{1080});
        storage::ClassStore::setMembership(action, late, member, true);
        FollowUp due;
        due.text = "Ask about the knee";
        due.written = kToday - 7;
        due.due = kToday;
        due.member = member;
        TodayStore::write(action, due);
        DoneSet done = benchSet(logbook, member, kToday, 1, 8);
        done.member = storage::MemberStore::add(action, [] {
            Member other;
            other.code = "M2";
            return other;
        }());
        done.meeting = first;
        storage::SetStore::add(action, done);
        action.commit();
    }
    open();
    EXPECT_EQ(part<QListWidget>("todayMeetings").currentRow(), 1);
    EXPECT_EQ(part<QLabel>("todayBriefTitle").text(), QStringLiteral("Before Late (1 expected)"));
    auto& brief = part<QListWidget>("todayBrief");
    ASSERT_EQ(brief.count(), 3);
    EXPECT_EQ(brief.item(0)->text(),
              QStringLiteral("M1: Had pain last time: 5 of 10 in Barbell bench press."));
    EXPECT_EQ(brief.item(1)->text(), QStringLiteral("M1: New: seen once before."));
    EXPECT_EQ(brief.item(2)->text(), QStringLiteral("M1: Follow-up: Ask about the knee"));
}

TEST_F(TodayPageTest, TheFloorKeepsWhatItExpectsAndThePageScoresIt)
{
    const MemberId member = tests::addMember(logbook, "M1");
    for (int ago = 60; ago >= 3; ago -= 3) {
        DoneSet set = benchSet(logbook, member, kToday - ago, 1, 8);
        set.performed.reserve = Reserve{20};
        logSet(logbook, set);
    }
    FloorWriter writer(workspace);
    const ClassId group = writer.addClass("Morning");
    FloorReference reference = readReference(logbook);
    FloorSheet sheet = readSheet(logbook, reference, group, kToday);
    const ExerciseId bench = tests::exercise(logbook, "Barbell bench press").id;
    sheet.plan = {{{bench, 1, 8}, 1, {}, {}, {}}};
    writer.markCame(sheet, reference, member);
    sheet = readSheet(logbook, reference, group, kToday);
    const auto planned = storage::SetStore(logbook).plannedOf(sheet.meeting->id);
    ASSERT_EQ(planned.size(), 1U);
    ASSERT_TRUE(planned[0].prediction);
    EXPECT_NEAR(planned[0].prediction->reps, 10.0, 1.0);
    writer.changeLoad(planned, Mass::ofKilograms(50), kToday);
    const auto lighter = storage::SetStore(logbook).plannedOf(sheet.meeting->id);
    EXPECT_GT(lighter.at(0).prediction->reps, planned[0].prediction->reps + 2.0);
    KeyedSet keyed;
    keyed.reps = 12;
    keyed.reserve = Reserve{20};
    writer.log(sheet, lighter[0], keyed);
    ASSERT_EQ(storage::answeredPlans(logbook, kToday, kToday).size(), 1U);
    open();
    EXPECT_TRUE(part<QLabel>("todayHowRight").text().contains(QStringLiteral("of 1 sets")));
}

TEST_F(TodayPageTest, EveryPartHasANameToBeReadOut)
{
    addPained("M1");
    TodayPage& page = open();
    for (const QWidget* widget : page.findChildren<QWidget*>()) {
        if (widget->focusPolicy() != Qt::NoFocus && widget->isVisible() &&
            !widget->objectName().startsWith(QStringLiteral("qt_"))) {
            const auto* button = qobject_cast<const QAbstractButton*>(widget);
            EXPECT_FALSE(widget->accessibleName().isEmpty() &&
                         (button == nullptr || button->text().isEmpty()))
                << widget->objectName().toStdString();
        }
    }
}

TEST_F(TodayPageTest, TheBriefNamesLoadsThatChange)
{
    const MemberId mara = tests::addMember(logbook, "M1", "Mara Linden");
    {
        storage::Action action(logbook, storage::ActionKind::EditClass, kNow);
        const ClassId evening = storage::ClassStore::add(action, "Evening bars");
        storage::ClassStore::setMembership(action, evening, mara, true);
        const auto bench = storage::LibraryStore(logbook).findExercise("Barbell bench press");
        storage::ClassStore::setTemplate(action, evening, {{bench->id, 3, 8}});
        storage::ClassStore::addMeeting(action, evening, kToday, TimeOfDay{18 * 60});
        action.commit();
    }
    // Two sessions of two reps beyond the aim, with more in reserve than asked.
    for (const int ago : {35, 28, 21, 14, 7, 3}) {
        DoneSet set = benchSet(logbook, mara, kToday - ago, 1, ago > 7 ? 8 : 11);
        set.performed.reserve = Reserve{40};
        logSet(logbook, set);
    }
    open();
    auto& brief = part<QListWidget>("todayBrief");
    QStringList lines;
    for (int row = 0; row < brief.count(); ++row) {
        lines << brief.item(row)->text();
    }
    EXPECT_EQ(lines.filter(QStringLiteral("Mara Linden: Barbell bench press:")).size(), 1)
        << lines.join(QLatin1Char('\n')).toStdString();
    EXPECT_TRUE(lines.filter(QStringLiteral("last time")).size() == 1);
}

} // namespace
} // namespace levelbar::ui::today_page_test
