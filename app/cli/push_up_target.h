// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/target.h"
#include "storage/logbook.h"

#include <optional>

namespace levelbar::cli {

struct PushUpTargetQuestion {
    const storage::Logbook& logbook;
    const MemberHistory& history;
    const Library& library;
    const Exercise& exercise;
    const TargetQuestion& question;
};

// Says the hole for the reps asked for (reps + reserve to the end, two more or fewer), or for a
// push-up on the floor its load and the reps to expect. The exit status; nothing, and nothing
// said, where body, body mass or sets do not tell it.
[[nodiscard]] std::optional<int> sayPushUpTarget(const PushUpTargetQuestion& asked, bool isJson);

} // namespace levelbar::cli
