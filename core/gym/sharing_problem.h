// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/rack_sharing.h"
#include "core/gym/sharing_search.h"
#include "core/gym/turn_costs.h"

#include <cstddef>
#include <vector>

namespace levelbar {

// A task as bounds and searches see it: its lifters as places of TurnCosts, in the order of the
// tree of stacks; and the way back.
class SharingProblem {
public:
    // Faults: those of shareRacks(). The task must outlive the problem.
    [[nodiscard]] static Result<SharingProblem> make(const RackSharingTask& task);

    [[nodiscard]] const TurnCosts& costs() const { return m_costs; }

    [[nodiscard]] std::size_t racks() const { return static_cast<std::size_t>(m_task->racks); }

    [[nodiscard]] std::uint64_t seed() const { return m_task->seed; }

    // The task's lifter at a place.
    [[nodiscard]] std::size_t lifterAt(std::size_t place) const { return m_lifters[place]; }

    // Orders of places, each rack's turned so that its lightest lifter comes first.
    [[nodiscard]] RackSharing written(RackOrders racks, int lowerBound) const;

private:
    SharingProblem(const RackSharingTask& task,
                   std::vector<std::size_t> lifters,
                   std::vector<TurnCosts::Place> places)
        : m_task(&task)
        , m_lifters(std::move(lifters))
        , m_costs(std::move(places))
    {
    }

    [[nodiscard]] SharedRack rackOf(const std::vector<std::size_t>& round) const;
    void beginWithLightest(std::vector<std::size_t>& round) const;

    const RackSharingTask* m_task;
    std::vector<std::size_t> m_lifters; // by place
    TurnCosts m_costs;
};

} // namespace levelbar
