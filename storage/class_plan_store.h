// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/class_week.h"
#include "storage/action.h"

#include <vector>

namespace levelbar::storage {

// The template of a class with its blocks, and the weeks that differ from it.
class ClassPlanStore {
public:
    explicit ClassPlanStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    [[nodiscard]] std::vector<PlanItem> itemsOf(ClassId groupClass) const; // by position
    [[nodiscard]] std::vector<PlanBlock> blocksOf(ClassId groupClass) const;
    [[nodiscard]] std::vector<ClassWeek> weeksOf(ClassId groupClass) const; // by Monday

    // Each replaces what was there, and writes nothing when it is the same.
    static void setItems(WriteScope& scope, ClassId groupClass, const std::vector<PlanItem>& items);
    static void
    setBlocks(WriteScope& scope, ClassId groupClass, const std::vector<PlanBlock>& blocks);
    static void setWeek(WriteScope& scope, ClassId groupClass, const ClassWeek& week);
    static void removeWeek(WriteScope& scope, ClassId groupClass, Day monday);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
