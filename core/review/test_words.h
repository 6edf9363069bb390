// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/test_trends.h"
#include "core/review/wording.h"

namespace levelbar {

// "Rising 0.4 % a week, 0.1 to 0.8, over 11 weeks." and the other four calls, in percent or in
// the test's unit; where less is better also whether that is better.
[[nodiscard]] std::vector<Phrase> phrases(const TestReview& review, const TestKind& test);

// Where there is little room: "rising 0.4 % a week", "too early", "holding", "can't tell".
[[nodiscard]] Phrase shortPhrase(const TestReview& review, const TestKind& test);

// "42.5 kg": at most one decimal, what people read off a scale, a watch or a tape.
[[nodiscard]] std::string testValue(double value, const TestKind& test);

} // namespace levelbar
