// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"
#include "storage/action.h"
#include "storage/bulk_write.h"
#include "storage/class_store.h"
#include "storage/library_store.h"
#include "storage/logbook.h"
#include "storage/member_store.h"
#include "storage/set_store.h"
#include "tests/support/scripted_prompter.h"
#include "ui/floor/floor_grid.h"
#include "ui/floor/floor_model.h"
#include "ui/floor/floor_page.h"
#include "ui/workspace.h"

#include <QAbstractItemModelTester>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QSettings>
#include <QTemporaryDir>
#include <QtTest/QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace levelbar::ui {

inline const Day kClassDay = *parseDay("2026-11-25");
inline const Moment kClassMoment = *parseMoment("2026-11-25T17:30:00Z");

// A logbook in a file with three people in one class, the program around it, and hands on the
// keyboard. Mara and Noor benched a week ago; Otto is new.
class ClassFloorTest : public ::testing::Test {
protected:
    void SetUp() override
    {
        ASSERT_TRUE(m_folder.isValid());
        QSettings().clear();
        m_path = m_folder.filePath(QStringLiteral("gym.levelbar")).toStdString();
        m_logbook = storage::Logbook::create(m_path, kClassMoment);
        bench = exercise("Barbell bench press");
        oneArm = exercise("Single-arm dumbbell bench press");
        storage::BulkWrite write(*m_logbook, "test", kClassMoment);
        mara = add(write, "M001", "Mara Linden");
        noor = add(write, "M002", "Noor Ashby");
        otto = add(write, "M003", "Otto Fenn");
        evening = storage::ClassStore::add(write, "Evening bars");
        for (const MemberId member : {mara, noor, otto}) {
            storage::ClassStore::setMembership(write, evening, member, true);
        }
        storage::ClassStore::setTemplate(write, evening, {{bench, 2, {}}, {oneArm, 1, {}}});
        for (const MemberId member : {mara, noor}) {
            past(write, member, bench, Side::Both, {"60", 8});
            past(write, member, oneArm, Side::Left, {"14", 10});
            past(write, member, oneArm, Side::Right, {"14", 10});
        }
        write.commit();
    }

    void TearDown() override { closePage(); }

    struct Lifted {
        const char* load;
        int reps;
    };

    static MemberId add(storage::WriteScope& write, const char* code, const char* name)
    {
        Member member;
        member.code = code;
        member.name = name;
        return storage::MemberStore::add(write, member);
    }

    void past(storage::WriteScope& write,
              MemberId member,
              ExerciseId what,
              Side side,
              Lifted lifted,
              std::optional<MeetingId> meeting = std::nullopt)
    {
        DoneSet set;
        set.member = member;
        set.exercise = what;
        set.side = side;
        set.performed.day = kClassDay - 7;
        set.performed.order = ++m_pastOrder;
        set.performed.load = *parseMass(lifted.load, MassUnit::Kilogram);
        set.performed.reps = lifted.reps;
        set.meeting = meeting;
        storage::SetStore::add(write, set);
    }

    [[nodiscard]] ExerciseId exercise(const char* name) const
    {
        const auto found = storage::LibraryStore(*m_logbook).findExercise(name);
        EXPECT_TRUE(found.has_value()) << name;
        return found ? found->id : ExerciseId{};
    }

    // Opens the page as the program does, on the class's day.
    void openPage()
    {
        m_workspace.emplace(Workspace{*m_logbook,
                                      m_notifier,
                                      {[this] { return moment; }, [this] { return today; }},
                                      m_prompter});
        m_page = std::make_unique<FloorPage>(*m_workspace);
        m_page->resize(1200, 700);
        m_page->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(m_page.get()));
        m_page->activateWindow();
        // On an X server the focus only moves inside the active window.
        ASSERT_TRUE(QTest::qWaitForWindowActive(m_page.get()));
        grid = m_page->findChild<FloorGrid*>(QStringLiteral("floorGrid"));
        ASSERT_NE(grid, nullptr);
        m_tester = std::make_unique<QAbstractItemModelTester>(
            grid->model(), QAbstractItemModelTester::FailureReportingMode::Warning);
        m_peopleTester = std::make_unique<QAbstractItemModelTester>(
            list()->model(), QAbstractItemModelTester::FailureReportingMode::Warning);
    }

    void closePage()
    {
        m_tester.reset();
        m_peopleTester.reset();
        m_page.reset();
        m_workspace.reset();
    }

    void waitMinutes(int minutes) { moment.milliseconds += 60'000LL * minutes; }

    // As after a restart: another program opens the file that was left behind.
    void reopen(storage::OpenMode mode = storage::OpenMode::ReadWrite)
    {
        closePage();
        m_logbook->close();
        m_logbook.reset();
        storage::OpenOptions options;
        options.mode = mode;
        m_logbook = storage::Logbook::open(m_path, kClassMoment, options);
        openPage();
    }

    [[nodiscard]] QListView* list() const
    {
        return m_page->findChild<QListView*>(QStringLiteral("attendanceList"));
    }

    template <typename T> [[nodiscard]] T* part(const char* name) const
    {
        T* found = m_page->findChild<T*>(QLatin1String(name));
        EXPECT_NE(found, nullptr) << name;
        return found;
    }

    [[nodiscard]] std::string said() const
    {
        return part<QLabel>("floorSaid")->text().toStdString();
    }

    [[nodiscard]] std::string fault() const
    {
        return grid->currentIndex().data(FloorModel::FaultRole).toString().toStdString();
    }

    // The first `count` of the list come, marked by keys alone; then the grid has the keyboard.
    void markPeople(int count)
    {
        list()->setFocus();
        QTest::keyClick(list(), Qt::Key_Home);
        for (int person = 0; person < count; ++person) {
            QTest::keyClick(list(), person % 2 == 0 ? Qt::Key_Space : Qt::Key_Return);
            QTest::keyClick(list(), Qt::Key_Down);
        }
        grid->setFocus();
    }

    void keys(const char* text) const { QTest::keyClicks(grid, QLatin1String(text)); }

    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) const
    {
        QTest::keyClick(grid, key, modifiers);
    }

    void enter(const char* text) const
    {
        keys(text);
        press(Qt::Key_Enter, Qt::KeypadModifier);
    }

    [[nodiscard]] std::string shown(int row, int column) const
    {
        return grid->model()->index(row, column).data().toString().toStdString();
    }

    [[nodiscard]] std::pair<int, int> cursor() const
    {
        return {grid->currentIndex().row(), grid->currentIndex().column()};
    }

    [[nodiscard]] std::optional<storage::Meeting> meeting() const
    {
        return storage::ClassStore(*m_logbook).meeting(evening, today);
    }

    // What was done in the meeting, by when it was keyed: all that the logbook knows of it.
    [[nodiscard]] std::vector<DoneSet> stored() const
    {
        const auto found = meeting();
        return found ? storage::SetStore(*m_logbook).ofMeeting(found->id) : std::vector<DoneSet>{};
    }

    [[nodiscard]] std::vector<PlannedSet> planned() const
    {
        const auto found = meeting();
        return found ? storage::SetStore(*m_logbook).plannedOf(found->id)
                     : std::vector<PlannedSet>{};
    }

    Day today = kClassDay;
    Moment moment = kClassMoment;
    ExerciseId bench;
    ExerciseId oneArm;
    MemberId mara;
    MemberId noor;
    MemberId otto;
    ClassId evening;
    FloorGrid* grid = nullptr;

    QTemporaryDir m_folder;
    std::string m_path;
    std::optional<storage::Logbook> m_logbook;
    ChangeNotifier m_notifier;
    ::testing::StrictMock<ScriptedPrompter> m_prompter;
    std::optional<Workspace> m_workspace;
    std::unique_ptr<FloorPage> m_page;

private:
    std::unique_ptr<QAbstractItemModelTester> m_tester;
    std::unique_ptr<QAbstractItemModelTester> m_peopleTester;
    int m_pastOrder = 0;
};

} // namespace levelbar::ui
