// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/class_week.h"

#include <algorithm>

namespace levelbar {

namespace {

constexpr int kMoreInReserve = 20; // tenths
constexpr int kMostInReserve = 50;

PlanItem lighter(PlanItem item)
{
    item.what.sets = (item.what.sets + 1) / 2;
    const int tenths = item.reserve.value_or(kPlanReserve).tenths;
    item.reserve = Reserve{std::max(tenths, std::min(tenths + kMoreInReserve, kMostInReserve))};
    return item;
}

} // namespace

std::vector<PlanItem> planItems(std::span<const TemplateItem> items)
{
    std::vector<PlanItem> made;
    made.reserve(items.size());
    for (const TemplateItem& item : items) {
        made.push_back({item, 1, std::nullopt, std::nullopt, std::nullopt});
    }
    return made;
}

Day mondayOf(Day day)
{
    return day - (isoWeekday(day) - 1);
}

std::vector<PlanItem>
itemsIn(Day monday, std::span<const PlanItem> usual, std::span<const ClassWeek> weeks)
{
    std::vector<PlanItem> items(usual.begin(), usual.end());
    const auto week = std::find_if(weeks.begin(), weeks.end(), [&](const ClassWeek& one) {
        return one.monday == mondayOf(monday);
    });
    if (week == weeks.end()) {
        return items;
    }
    if (!week->items.empty()) {
        items = week->items;
    }
    if (week->kind == WeekKind::Lighter) {
        std::transform(items.begin(), items.end(), items.begin(), &lighter);
    }
    return items;
}

std::vector<ItemChange> changesBetween(std::span<const PlanItem> before,
                                       std::span<const PlanItem> after)
{
    std::vector<bool> isMet(before.size(), false);
    std::vector<ItemChange> changes;
    for (const PlanItem& now : after) {
        std::size_t was = 0;
        while (was < before.size() &&
               (isMet[was] || before[was].what.exercise != now.what.exercise)) {
            ++was;
        }
        if (was == before.size()) {
            changes.push_back({ItemNews::Added, now.what.exercise, std::nullopt, now});
            continue;
        }
        isMet[was] = true;
        if (before[was] != now) {
            changes.push_back({ItemNews::Changed, now.what.exercise, before[was], now});
        }
    }
    for (std::size_t was = 0; was < before.size(); ++was) {
        if (!isMet[was]) {
            changes.push_back(
                {ItemNews::Removed, before[was].what.exercise, before[was], std::nullopt});
        }
    }
    return changes;
}

} // namespace levelbar
