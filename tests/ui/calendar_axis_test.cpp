// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/calendar_axis.h"

#include <QLocale>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace levelbar::ui::calendar_axis_test {
namespace {

std::vector<std::string> labels(const char* from, const char* to, std::size_t most)
{
    std::vector<std::string> texts;
    for (const CalendarLabel& label :
         calendarLabels(*parseDay(from), *parseDay(to), QLocale(QLocale::English), most)) {
        texts.push_back(label.text.toStdString());
    }
    return texts;
}

TEST(CalendarLabelsTest, WithinAYearTheMonthIsEnough)
{
    EXPECT_THAT(labels("2026-02-15", "2026-08-20", 6),
                testing::ElementsAre("Mar", "Apr", "May", "Jun", "Jul", "Aug"));
}

// Whatever the stride: a label says its year where it is another one than before.
TEST(CalendarLabelsTest, EveryYearIsNamedOnce)
{
    EXPECT_THAT(labels("2019-01-07", "2026-11-23", 5),
                testing::ElementsAre("Feb ’19", "Sep ’20", "Apr ’22", "Nov ’23", "Jun ’25"));
    EXPECT_THAT(labels("2025-09-10", "2026-03-10", 6),
                testing::ElementsAre("Oct ’25", "Nov", "Dec", "Jan ’26", "Feb", "Mar"));
}

} // namespace
} // namespace levelbar::ui::calendar_axis_test
