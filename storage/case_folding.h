// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace levelbar::storage {

// Two texts are the same without regard to case, in any script, when their folded forms are
// equal: Unicode full case folding after canonical composition (ICU).
[[nodiscard]] std::string foldCase(std::string_view text);

} // namespace levelbar::storage
