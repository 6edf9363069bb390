// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/history.h"

#include <algorithm>

namespace levelbar {

const Exercise* Library::exercise(ExerciseId id) const
{
    const auto found = std::lower_bound(exercises.begin(),
                                        exercises.end(),
                                        id,
                                        [](const Exercise& e, ExerciseId i) { return e.id < i; });
    return found != exercises.end() && found->id == id ? &*found : nullptr;
}

const TestKind* Library::test(TestId id) const
{
    const auto found = std::lower_bound(
        tests.begin(), tests.end(), id, [](const TestKind& t, TestId i) { return t.id < i; });
    return found != tests.end() && found->id == id ? &*found : nullptr;
}

MemberHistory historyBefore(MemberHistory history, Day day)
{
    for (SetSeries& series : history.sets) {
        std::erase_if(series.sets, [day](const PerformedSet& set) { return set.day >= day; });
    }
    for (TrialSeries& series : history.trials) {
        std::erase_if(series.trials, [day](const Trial& trial) { return trial.day >= day; });
    }
    return history;
}

} // namespace levelbar
