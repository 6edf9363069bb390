// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/today/plan_brief.h"

namespace levelbar {

namespace {

std::string massWords(const Mass& mass)
{
    return mass.number() + " " + std::string(unitWord(mass.unit()));
}

std::optional<PlanBriefEntry>
changedTarget(const PlannedTarget& planned, const PlanItem& item, const Library& library)
{
    const auto load = planned.load();
    const Exercise* exercise = library.exercise(item.what.exercise);
    if (!load || !planned.target || exercise == nullptr) {
        return std::nullopt;
    }
    const auto& last = planned.target->progression.last;
    if (!last || exactWeight(*last) == load->exact) {
        return std::nullopt;
    }
    return PlanBriefEntry{
        planned.member,
        {"%1: %2, last time %3.", {exercise->name, massWords(load->load), massWords(*last)}}};
}

} // namespace

std::vector<PlanBriefEntry>
planBrief(const MeetingPlanAnswer& answer, std::span<const PlanItem> items, const Library& library)
{
    std::vector<PlanBriefEntry> brief;
    for (const KitClash& clash : answer.clashes) {
        brief.push_back({MemberId{}, clashPhrase(clash)});
    }
    for (const PlannedTarget& planned : answer.targets) {
        if (auto entry = changedTarget(planned, items[planned.item], library)) {
            brief.push_back(std::move(*entry));
        }
    }
    return brief;
}

} // namespace levelbar
