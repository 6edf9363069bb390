// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/class_hour.h"
#include "ui/floor/wall_window.h"
#include "ui/theme.h"

#include <QApplication>
#include <QImage>

#include <gtest/gtest.h>

namespace levelbar::ui::wall_window_test {
namespace {

const FloorBook& book()
{
    static const FloorBook kBook = withLoads(tests::gymBook());
    return kBook;
}

TEST(WallTest, EveryStationSaysWhoseTurnItIsAndWhoIsNext)
{
    const ClassFloor hour = tests::fullClass();
    const auto racks = wallOf(hour, book(), {});
    ASSERT_EQ(racks.size(), hour.stations.size());
    for (const WallRack& rack : racks) {
        const auto first =
            std::find_if(hour.cells.begin(), hour.cells.end(), [&](const PadCell& cell) {
                return cell.station == rack.number;
            });
        ASSERT_NE(first, hour.cells.end());
        EXPECT_EQ(rack.bib, first->planned.member.value) << "bibs are as the ids here";
        EXPECT_FALSE(rack.work.isEmpty());
        EXPECT_FALSE(rack.next.empty());
        EXPECT_EQ(std::count(rack.next.begin(), rack.next.end(), *rack.bib), 0);
    }
    EXPECT_EQ(racks[0].next.size(), 2U) << "three share the first rack";
}

TEST(WallTest, NothingIsSaidOfNamesNorOfWhatABodyWeighs)
{
    ClassFloor hour = tests::smallClass({{1, StationKind::Rack, true}}, {1, 1}, 2);
    for (FloorPerson& who : hour.people) {
        who.name = "Somebody";
    }
    for (PadCell& cell : hour.cells) {
        cell.planned.exercise = tests::kPushUp;
        cell.planned.load = Mass::ofKilograms(10); // a vest
    }
    const WallRack rack = wallOf(hour, book(), {}).at(0);
    EXPECT_FALSE(rack.amount.contains(QStringLiteral("kg"))) << rack.amount.toStdString();
    EXPECT_FALSE((rack.work + rack.amount).contains(QStringLiteral("Somebody")));
    EXPECT_FALSE(rack.isBar);
}

TEST(WallTest, WhoHasLeftIsNotCalledAnyMore)
{
    const ClassFloor hour = tests::smallClass({{1, StationKind::Rack, true}}, {1, 1}, 2);
    tests::Keyboard keys(hour, tests::gymBook());
    keys.type("/1\ng\n");
    const WallRack rack = wallOf(keys.floor(), book(), {}).at(0);
    EXPECT_EQ(rack.bib, 2);
    EXPECT_TRUE(rack.next.empty());
}

class WallWindowTest : public testing::TestWithParam<ThemeChoice> {};

// What is painted of a station stays in its place, and letters can be read from across the room:
// at least 40 px without ascenders on a screen of 1920 × 1080.
TEST_P(WallWindowTest, EveryStationIsPaintedWithinItsPlaceInLargeLetters)
{
    applyTheme(*qApp, GetParam());
    WallWindow wall;
    wall.resize(1920, 1080);
    EXPECT_GE(wall.xHeight(), 40);
    const std::vector<WallRack> racks = wallOf(tests::fullClass(), book(), {});
    constexpr int kColumns = 4; // of ten stations
    constexpr int kRows = 3;
    ASSERT_EQ(racks.size(), 10U);
    wall.showRacks(racks);
    const QImage whole = wall.grab().toImage();
    for (std::size_t at = 0; at < racks.size(); ++at) {
        std::vector<WallRack> others = racks;
        others[at] = WallRack{racks[at].number, true, {}, {}, {}, false, {}, {}, {}};
        wall.showRacks(others);
        const QImage without = wall.grab().toImage();
        const auto column = static_cast<int>(at) % kColumns;
        const auto row = static_cast<int>(at) / kColumns;
        const QRect place(
            column * 1920 / kColumns, row * 1080 / kRows, 1920 / kColumns, 1080 / kRows);
        int inside = 0;
        int outside = 0;
        for (int y = 0; y < whole.height(); ++y) {
            for (int x = 0; x < whole.width(); ++x) {
                if (whole.pixel(x, y) != without.pixel(x, y)) {
                    ++(place.contains(x, y) ? inside : outside);
                }
            }
        }
        EXPECT_GT(inside, 2000) << "station " << racks[at].number;
        EXPECT_EQ(outside, 0) << "station " << racks[at].number << " runs into another";
    }
}

INSTANTIATE_TEST_SUITE_P(Themes,
                         WallWindowTest,
                         testing::Values(ThemeChoice::Light, ThemeChoice::Dark),
                         [](const auto& which) {
                             return which.param == ThemeChoice::Light ? "Light" : "Dark";
                         });

} // namespace
} // namespace levelbar::ui::wall_window_test
