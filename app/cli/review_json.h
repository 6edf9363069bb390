// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/review.h"

#include <nlohmann/json.hpp>

#include <set>

namespace levelbar::cli {

// The review in the form of the outside face. `only`: ids to print; empty = everyone.
[[nodiscard]] nlohmann::ordered_json
reviewJson(const Review& review, const Library& library, const std::set<MemberId>& only);

} // namespace levelbar::cli
