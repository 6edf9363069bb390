// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/action.h"

#include <QString>

namespace levelbar::ui {

// What an action changed, for "Taken back: %1.": "a logged set".
[[nodiscard]] QString actionWords(storage::ActionKind kind);

} // namespace levelbar::ui
