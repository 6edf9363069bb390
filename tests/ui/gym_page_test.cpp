// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/gym_store.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/scripted_prompter.h"
#include "ui/gym/gym_page.h"
#include "ui/workspace.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QTableView>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace levelbar::ui::gym_page_test {
namespace {

using tests::kNow;

class GymPageTest : public testing::Test {
protected:
    Kit kit() const { return storage::GymStore(logbook).kit(); }

    template <typename T> T* part(const char* name)
    {
        return page.findChild<T*>(QLatin1String(name));
    }

    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    ChangeNotifier notifier;
    testing::StrictMock<ScriptedPrompter> prompter;
    Workspace workspace{
        logbook, notifier, Clock{[] { return kNow; }, [] { return Day{20600}; }}, prompter};
    GymPage page{workspace};
};

TEST_F(GymPageTest, SaysThatNobodyHasSaidYet)
{
    EXPECT_TRUE(part<QLabel>("kitAssumed")->text().contains(QStringLiteral("assumed")));
    EXPECT_TRUE(kit().isAssumed);
}

TEST_F(GymPageTest, APieceIsAddedByKeyboardAndTakenBack)
{
    part<QComboBox>("pieceWhat")->setCurrentIndex(1);
    part<QSpinBox>("pieceCount")->setValue(4);
    QTest::keyClicks(part<QLineEdit>("pieceMass"), QStringLiteral("0,5"));
    QTest::keyClick(part<QLineEdit>("pieceMass"), Qt::Key_Return);
    ASSERT_FALSE(kit().isAssumed);
    EXPECT_EQ(kit().plates.back(), (PlateKind{Mass::ofKilograms(0.5), 4}));
    EXPECT_TRUE(part<QLineEdit>("pieceMass")->text().isEmpty());
    notifier.announce(storage::takeBack(logbook, storage::lastTakeable(logbook).value(), kNow));
    EXPECT_TRUE(kit().isAssumed);
    EXPECT_TRUE(part<QLabel>("kitAssumed")->text().contains(QStringLiteral("assumed")));
}

TEST_F(GymPageTest, WhatStandsThereTwiceIsRefusedAndNothingIsLost)
{
    QTest::keyClicks(part<QLineEdit>("pieceMass"), QStringLiteral("25"));
    QTest::keyClick(part<QLineEdit>("pieceMass"), Qt::Key_Return);
    EXPECT_TRUE(part<QLabel>("kitLine")->text().contains(QStringLiteral("stands there twice")))
        << part<QLabel>("kitLine")->text().toStdString();
    EXPECT_TRUE(kit().isAssumed);
    EXPECT_EQ(part<QLineEdit>("pieceMass")->text(), QStringLiteral("25"));
}

TEST_F(GymPageTest, LinesAreEditedInPlaceAndRemoved)
{
    auto* model = part<QTableView>("kitTable")->model();
    const QAbstractItemModelTester tester(model,
                                          QAbstractItemModelTester::FailureReportingMode::Warning);
    const int rows = model->rowCount();
    ASSERT_TRUE(model->setData(model->index(1, KitModel::CountColumn), QStringLiteral("6")));
    EXPECT_EQ(kit().plates.front().count, 6);
    EXPECT_FALSE(model->setData(model->index(1, KitModel::CountColumn), QStringLiteral("-1")));
    part<QTableView>("kitTable")->selectRow(1);
    QTest::mouseClick(part<QPushButton>("pieceRemove"), Qt::LeftButton);
    EXPECT_EQ(model->rowCount(), rows - 1);
    EXPECT_EQ(kit().plates.front().mass, Mass::ofKilograms(20));
}

TEST_F(GymPageTest, WhatIsGoneTodayIsMarkedAndTheLoadsObey)
{
    auto* model = part<QTableView>("kitTable")->model();
    const QModelIndex bars = model->index(0, KitModel::GoneColumn);
    EXPECT_FALSE(model->flags(bars).testFlag(Qt::ItemIsEditable)) << "nobody said how many";
    ASSERT_TRUE(model->setData(model->index(0, KitModel::CountColumn), QStringLiteral("2")));
    EXPECT_FALSE(model->setData(model->index(0, KitModel::GoneColumn), QStringLiteral("3")));
    ASSERT_TRUE(model->setData(model->index(0, KitModel::GoneColumn), QStringLiteral("2")));
    EXPECT_EQ(model->index(0, KitModel::GoneColumn).data().toString(), QStringLiteral("2"));
    EXPECT_TRUE(part<QLabel>("kitLoads")->text().startsWith(QStringLiteral("No bar")));
    EXPECT_EQ(kit().bars.front().count, 2) << "still owned";
    EXPECT_EQ(storage::GymStore(logbook).kitOn(Day{20600}).bars.front().count, 0);
    EXPECT_EQ(storage::GymStore(logbook).kitOn(Day{20601}).bars.front().count, 2);
}

TEST_F(GymPageTest, TheLastBarCannotGo)
{
    part<QTableView>("kitTable")->selectRow(0);
    QTest::mouseClick(part<QPushButton>("pieceRemove"), Qt::LeftButton);
    EXPECT_TRUE(part<QLabel>("kitLine")->text().contains(QStringLiteral("at least one bar")));
}

TEST_F(GymPageTest, CollarsCountAndEffortIsOneChoice)
{
    auto* collars = part<QLineEdit>("kitCollars");
    collars->setText(QStringLiteral("5"));
    QTest::keyClick(collars, Qt::Key_Return);
    EXPECT_EQ(kit().collars, Mass::ofKilograms(5));
    EXPECT_TRUE(part<QLabel>("kitLoads")->text().startsWith(QStringLiteral("25, ")));
    auto* effort = part<QComboBox>("effortScale");
    QTest::keyClick(effort, Qt::Key_Down);
    EXPECT_EQ(storage::GymStore(logbook).effortScale(), EffortScale::Rpe);
}

} // namespace
} // namespace levelbar::ui::gym_page_test
