// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/fault.h"
#include "core/review/attention.h"
#include "core/review/wording.h"

#include <QString>

#include <string_view>

namespace levelbar::ui {

// Core's words in the window's language: the template is translated, then filled in. Arguments
// that are words of ours are translated, too; names and numbers pass through.
[[nodiscard]] QString words(const std::vector<Phrase>& phrases);
[[nodiscard]] QString words(const Phrase& phrase);
[[nodiscard]] QString words(const Fault& fault);
[[nodiscard]] QString words(const Attention& attention);

// A single word of core's tables ("novice", "counted").
[[nodiscard]] QString word(std::string_view text);

// A day as a reader sees it, in the program's language: "3 Mar 2026".
[[nodiscard]] QString dayText(Day day);

// UTF-8 text that is data, never translated.
[[nodiscard]] QString plain(std::string_view text);

} // namespace levelbar::ui
