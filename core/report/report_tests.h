// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/report/person_report.h"

#include <vector>

namespace levelbar {

// A line a test with a valid trial up to `asOf`, by test: the best of the last day and of the
// first, both sides where each is tested. Tests without a better direction (body mass) are left
// out: a page that lies about is no place for them.
[[nodiscard]] std::vector<ReportTest>
testLines(const MemberHistory& history, const Library& library, Day asOf);

} // namespace levelbar
