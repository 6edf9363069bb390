// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/session_store.h"
#include "storage/today_store.h"
#include "tests/ui/class_floor_fixture.h"
#include "ui/floor/pad_line.h"

#include <QListWidget>
#include <QSpinBox>

namespace levelbar::ui::class_floor_closing_test {

class ClosingPanelTest : public ClassFloorTest {
protected:
    void openPanel()
    {
        QTest::keyClick(m_page.get(), Qt::Key_F8);
        people = part<QListWidget>("closingPeople");
        ASSERT_TRUE(people->isVisible());
    }

    [[nodiscard]] std::map<MemberId, int> ratings() const
    {
        return storage::SessionStore(*m_logbook).ratingsOf(meeting()->id);
    }

    [[nodiscard]] std::string count() const
    {
        return part<QLabel>("closingCount")->text().toStdString();
    }

    QListWidget* people = nullptr;
};

TEST_F(ClosingPanelTest, ADigitRatesAndGoesOnToTheNext)
{
    openPage();
    markPeople(3);
    openPanel();
    QTest::keyClicks(people, QStringLiteral("7+0"));
    EXPECT_EQ(ratings(), (std::map<MemberId, int>{{mara, 7}, {noor, 10}, {otto, 0}}));
    QTest::keyClick(people, Qt::Key_Up);
    QTest::keyClick(people, Qt::Key_Delete);
    EXPECT_EQ(ratings(), (std::map<MemberId, int>{{mara, 7}, {otto, 0}}));
    storage::takeBack(*m_logbook, storage::lastTakeable(*m_logbook).value(), kClassMoment);
    EXPECT_EQ(ratings().size(), 3U) << "every digit can be taken back";
}

TEST_F(ClosingPanelTest, CountsWhatIsKnownAndHow)
{
    openPage();
    markPeople(2);
    keys("9");
    press(Qt::Key_Return);
    press(Qt::Key_Return);
    openPanel();
    EXPECT_THAT(count(),
                ::testing::HasSubstr("8 sets: 1 seen, 1 accepted, 0 not asked for, 6 not known."));
    EXPECT_THAT(count(), ::testing::HasSubstr("was not missed"));
}

TEST_F(ClosingPanelTest, SaysWhoseSetsWereSetAsideAndWhyAndWhoIsStillToBeAsked)
{
    openPage();
    markPeople(2);
    auto* pad = part<PadLine>("padLine");
    pad->setFocus();
    QTest::keyClicks(pad, QStringLiteral("e"));
    QTest::keyClick(pad, Qt::Key_Return);
    openPanel();
    EXPECT_THAT(people->item(0)->text().toStdString(),
                ::testing::HasSubstr("not asked for: easy day"));
    EXPECT_THAT(people->item(0)->text().toStdString(), ::testing::HasSubstr("1 Mara Linden"));
    EXPECT_THAT(people->item(1)->text().toStdString(),
                ::testing::Not(::testing::HasSubstr("easy day")));
    EXPECT_THAT(count(), ::testing::HasSubstr("How hard it was: 0 of 2 asked."));
    QTest::keyClicks(people, QStringLiteral("5"));
    EXPECT_THAT(count(), ::testing::HasSubstr("1 of 2 asked."));
    QTest::keyClicks(people, QStringLiteral("5"));
    EXPECT_THAT(count(), ::testing::HasSubstr("Everybody has said how hard it was."));
}

TEST_F(ClosingPanelTest, BeginsAtTheFirstWhoWasNotAskedAndShowsWhatIsKept)
{
    openPage();
    markPeople(2);
    openPanel();
    QTest::keyClicks(people, QStringLiteral("4"));
    QTest::keyClick(people, Qt::Key_Escape);
    EXPECT_FALSE(people->isVisible());
    reopen();
    openPanel();
    EXPECT_EQ(people->currentRow(), 1);
    EXPECT_TRUE(people->item(0)->text().trimmed().startsWith(QLatin1Char('4')));
}

TEST_F(ClosingPanelTest, AFollowUpIsKeptForThePersonUnderTheCursor)
{
    openPage();
    markPeople(2);
    openPanel();
    QTest::keyClick(people, Qt::Key_Down);
    auto* text = part<QLineEdit>("closingFollowUp");
    QTest::keyClick(text, Qt::Key_Return);
    EXPECT_TRUE(part<QLabel>("closingSaid")->text().startsWith(QStringLiteral("Not kept")));
    text->setText(QStringLiteral("Look at the left shoulder"));
    QTest::keyClick(text, Qt::Key_Return);
    const auto kept = storage::TodayStore(*m_logbook).followUps(kClassDay);
    ASSERT_EQ(kept.size(), 1U);
    EXPECT_EQ(kept[0].member, noor);
    EXPECT_EQ(kept[0].due, kClassDay + 7);
}

TEST_F(ClosingPanelTest, HowLongItLastedIsKept)
{
    openPage();
    markPeople(1);
    openPanel();
    part<QSpinBox>("closingMinutes")->setValue(55);
    EXPECT_EQ(storage::SessionStore(*m_logbook).minutesOf(meeting()->id), 55);
}

TEST_F(ClosingPanelTest, WhereNobodyCameNothingIsAskedOrWritten)
{
    openPage();
    openPanel();
    QTest::keyClicks(people, QStringLiteral("7"));
    EXPECT_FALSE(meeting().has_value());
    EXPECT_FALSE(part<QSpinBox>("closingMinutes")->isEnabled());
}

} // namespace levelbar::ui::class_floor_closing_test
