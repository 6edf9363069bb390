// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/side_words.h"

#include <QString>

namespace levelbar::ui {

// What is said of a left/right difference: "Left weaker by 12 %, 7 to 18 (very likely)." For who
// is sent on without odds: those are for what can be trained.
[[nodiscard]] QString sideSentence(const SideReview& side);

// The line of a list: why and since when.
[[nodiscard]] QString listedText(const SideReview& side);

// All that is known of it: what it is built on, why it is on its list or on none, what is agreed.
[[nodiscard]] QString sideStory(const SideReview& side, Day asOf);

} // namespace levelbar::ui
