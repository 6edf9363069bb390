// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/newcomer.h"
#include "core/floor/number_pad.h"

namespace levelbar {

// What one command does to the hour; inside the number pad only.
struct PadAnswer {
    FloorChange change;
    bool isChange = true; // else only the cursor moved, or something is asked
    std::optional<PadQuestion> question;
};

// Every command but TakeBack. Persons are those under the cursor.
[[nodiscard]] Result<PadAnswer> answerTo(const ClassFloor& floor,
                                         const FloorBook& book,
                                         const PadCommand& command,
                                         const PadTime& time);

} // namespace levelbar
