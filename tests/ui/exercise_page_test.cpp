// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/exercise_detail_store.h"
#include "storage/ladder_store.h"
#include "storage/shipped_library.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/scripted_prompter.h"
#include "ui/exercises/exercise_page.h"

#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSpinBox>
#include <QTextBrowser>
#include <QTreeWidget>
#include <QtTest/QTest>

#include <gtest/gtest.h>

#include <algorithm>

namespace levelbar::ui::exercise_page_test {
namespace {

using tests::exercise;
using tests::kNow;

class ExercisePageTest : public testing::Test {
protected:
    ExercisePageTest()
    {
        page.resize(1200, 700);
        page.show();
    }

    template <typename T> T* part(const char* name)
    {
        return page.findChild<T*>(QLatin1String(name));
    }

    QString shown() { return part<QTextBrowser>("exerciseText")->toPlainText(); }

    // The names in the list.
    QStringList listed()
    {
        QStringList names;
        const auto* list = part<QTreeWidget>("exerciseList");
        for (int group = 0; group < list->topLevelItemCount(); ++group) {
            for (int row = 0; row < list->topLevelItem(group)->childCount(); ++row) {
                names << list->topLevelItem(group)->child(row)->text(0);
            }
        }
        return names;
    }

    void openLadder()
    {
        page.activateWindow(); // a shortcut is of the active window
        ASSERT_TRUE(QTest::qWaitForWindowActive(&page));
        filter("wall push-up");
        QTest::keyClick(part<QLineEdit>("exerciseFilter"), Qt::Key_F4);
    }

    void filter(const char* text)
    {
        part<QLineEdit>("exerciseFilter")->clear();
        QTest::keyClicks(part<QLineEdit>("exerciseFilter"), QLatin1String(text));
    }

    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    ChangeNotifier notifier;
    testing::StrictMock<ScriptedPrompter> prompter;
    Workspace workspace{
        logbook, notifier, Clock{[] { return kNow; }, [] { return Day{20600}; }}, prompter};
    ExercisePage page{workspace};
};

TEST_F(ExercisePageTest, TheListFollowsWhatIsTyped)
{
    const auto all = listed().size();
    EXPECT_GT(all, 100);
    filter("bench barbell");
    EXPECT_LT(listed().size(), all);
    EXPECT_TRUE(listed().contains(QStringLiteral("Incline barbell bench press")));
    EXPECT_FALSE(listed().contains(QStringLiteral("Push-up")));
    filter("no such thing");
    EXPECT_TRUE(listed().isEmpty());
    EXPECT_TRUE(shown().isEmpty());
}

TEST_F(ExercisePageTest, AnExerciseIsShownWithAllThatIsKnown)
{
    filter("incline barbell bench");
    const QString text = shown();
    for (const char* wanted : {"Blades back and down",
                               "Cautions",
                               "shoulder",
                               "30 degrees",
                               "83 % of Barbell",
                               "Source"}) {
        EXPECT_TRUE(text.contains(QLatin1String(wanted))) << wanted;
    }
    filter("incline push-up");
    EXPECT_TRUE(shown().contains(QStringLiteral("Ladder: Push-up")));
    EXPECT_TRUE(shown().contains(QStringLiteral("clean reps in 2 sets")));
}

TEST_F(ExercisePageTest, AnOwnExerciseWithItsRungIsAddedByKeyboardAlone)
{
    filter("incline push-up");
    QTest::mouseClick(part<QPushButton>("exerciseNew"), Qt::LeftButton);
    auto* name = part<QLineEdit>("exerciseName");
    QTest::keyClicks(name, QStringLiteral("Ring push-up"));
    auto* ladder = part<QComboBox>("exerciseLadder");
    ladder->setCurrentText(QStringLiteral("Push-up"));
    ASSERT_EQ(ladder->currentText(), QStringLiteral("Push-up"));
    part<QSpinBox>("exerciseGate")->setValue(10);
    QTest::keyClicks(part<QLineEdit>("exerciseCues"), QStringLiteral("Rings low | Turn out"));
    QTest::keyClicks(part<QLineEdit>("exerciseAreas"), QStringLiteral("shoulder, chest"));
    QTest::keyClick(name, Qt::Key_Return, Qt::ControlModifier);
    const Exercise own = exercise(logbook, "Ring push-up");
    EXPECT_FALSE(own.isShipped);
    EXPECT_EQ(own.pattern, Pattern::HorizontalPress);
    EXPECT_EQ(own.implement, Implement::BodyWeight);
    EXPECT_EQ(storage::ExerciseDetailStore(logbook).find(own.id).cues,
              (std::vector<std::string>{"Rings low", "Turn out"}));
    const auto ladders = storage::LadderStore(logbook).all();
    const auto pushUps = std::find_if(
        ladders.begin(), ladders.end(), [](const Ladder& l) { return l.key == "push-up"; });
    ASSERT_NE(pushUps, ladders.end());
    EXPECT_FALSE(pushUps->isShipped);
    EXPECT_EQ(pushUps->rungs.back().exerciseKey, own.key);
    EXPECT_EQ(pushUps->rungs.back().up.amount, 10);
    EXPECT_EQ(part<QLabel>("exerciseTitle")->text(), QStringLiteral("Ring push-up"));
    notifier.announce(storage::takeBack(logbook, storage::lastTakeable(logbook).value(), kNow));
    EXPECT_FALSE(listed().contains(QStringLiteral("Ring push-up")));
}

TEST_F(ExercisePageTest, RungsAreMovedTakenOutAndGivenOtherGatesByKeyboard)
{
    const auto pushUps = [this] {
        const auto ladders = storage::LadderStore(logbook).all();
        return *std::find_if(
            ladders.begin(), ladders.end(), [](const Ladder& l) { return l.key == "push-up"; });
    };
    const Ladder shipped = pushUps();
    ASSERT_TRUE(shipped.isShipped);
    openLadder();
    auto* rungs = part<QListWidget>("ladderRungs");
    ASSERT_TRUE(rungs->isVisible());
    ASSERT_EQ(rungs->count(), static_cast<int>(shipped.rungs.size()));
    rungs->setCurrentRow(0);
    QTest::keyClick(rungs, Qt::Key_Down, Qt::ControlModifier); // the easiest one rung harder
    EXPECT_EQ(rungs->currentRow(), 1);
    part<QSpinBox>("ladderUpAmount")->setValue(18);
    QTest::keyClick(rungs, Qt::Key_End);
    QTest::keyClick(rungs, Qt::Key_Delete);
    EXPECT_EQ(rungs->count(), static_cast<int>(shipped.rungs.size()) - 1);
    EXPECT_TRUE(pushUps().isShipped) << "not kept yet";
    QTest::keyClick(rungs, Qt::Key_Return, Qt::ControlModifier);
    const Ladder own = pushUps();
    EXPECT_FALSE(own.isShipped);
    ASSERT_EQ(own.rungs.size(), shipped.rungs.size() - 1);
    EXPECT_EQ(own.rungs[0], shipped.rungs[1]);
    EXPECT_EQ(own.rungs[1].exerciseKey, shipped.rungs[0].exerciseKey);
    EXPECT_EQ(own.rungs[1].up.amount, 18);
    EXPECT_EQ(own.rungs[1].source, "this gym");
    openLadder();
    auto* back = part<QPushButton>("ladderShipped");
    ASSERT_TRUE(back->isVisible());
    QTest::mouseClick(back, Qt::LeftButton);
    EXPECT_EQ(pushUps(), shipped);
}

TEST_F(ExercisePageTest, ARungIsAddedAfterTheChosenOneAndATwiceUsedOneIsRefused)
{
    openLadder();
    auto* rungs = part<QListWidget>("ladderRungs");
    const int before = rungs->count();
    auto* wanted = part<QComboBox>("ladderExercise");
    wanted->setCurrentText(QStringLiteral("Wall push-up"));
    rungs->setCurrentRow(0);
    QTest::mouseClick(part<QPushButton>("ladderAdd"), Qt::LeftButton);
    ASSERT_EQ(rungs->count(), before + 1);
    EXPECT_EQ(rungs->currentRow(), 1);
    QTest::keyClick(rungs, Qt::Key_Return, Qt::ControlModifier);
    EXPECT_TRUE(part<QLabel>("ladderRefused")->text().startsWith(QStringLiteral("Not kept: ")));
    QTest::keyClicks(part<QLineEdit>("ladderSetting"), QStringLiteral("one foot forward"));
    QTest::keyClick(rungs, Qt::Key_Return, Qt::ControlModifier);
    EXPECT_FALSE(rungs->isVisible()) << part<QLabel>("ladderRefused")->text().toStdString();
}

TEST_F(ExercisePageTest, AShippedOneIsChangedAndStaysSoWhenTheLibraryIsRefreshed)
{
    filter("floor press");
    QTest::mouseClick(part<QPushButton>("exerciseChange"), Qt::LeftButton);
    EXPECT_FALSE(part<QComboBox>("exercisePattern")->isEnabled());
    auto* cautions = part<QLineEdit>("exerciseCautions");
    cautions->setText(QStringLiteral("Elbows touch, they do not drop"));
    QTest::keyClick(cautions, Qt::Key_Return, Qt::ControlModifier);
    EXPECT_TRUE(shown().contains(QStringLiteral("they do not drop")));
    const Exercise press = exercise(logbook, "Floor press");
    EXPECT_EQ(storage::ExerciseDetailStore(logbook).find(press.id).cautions.size(), 1U);
    EXPECT_TRUE(press.isShipped);
}

TEST_F(ExercisePageTest, WhatCannotBeKeptSaysWhyAndNothingIsLost)
{
    QTest::mouseClick(part<QPushButton>("exerciseNew"), Qt::LeftButton);
    auto* name = part<QLineEdit>("exerciseName");
    name->setText(QStringLiteral("push-UP"));
    QTest::keyClick(name, Qt::Key_Return, Qt::ControlModifier);
    EXPECT_TRUE(part<QLabel>("exerciseRefused")->text().contains(QStringLiteral("there already")));
    name->setText(QStringLiteral("Ring push-up"));
    part<QLineEdit>("exerciseAreas")->setText(QStringLiteral("elbows"));
    QTest::keyClick(name, Qt::Key_Return, Qt::ControlModifier);
    EXPECT_TRUE(part<QLabel>("exerciseRefused")->text().contains(QStringLiteral("elbows")));
    EXPECT_EQ(name->text(), QStringLiteral("Ring push-up"));
    EXPECT_FALSE(storage::LibraryStore(logbook).findExercise("Ring push-up"));
    QTest::keyClick(name, Qt::Key_Escape);
    EXPECT_TRUE(part<QLabel>("exerciseTitle")->isVisible());
}

TEST_F(ExercisePageTest, AHiddenOneIsGoneFromTheListUntilAskedFor)
{
    filter("floor press");
    const QString name = part<QLabel>("exerciseTitle")->text();
    QTest::mouseClick(part<QPushButton>("exerciseHide"), Qt::LeftButton);
    EXPECT_FALSE(listed().contains(name));
    QTest::mouseClick(part<QAbstractButton>("exerciseWithHidden"), Qt::LeftButton);
    EXPECT_TRUE(listed().contains(name));
}

} // namespace
} // namespace levelbar::ui::exercise_page_test
