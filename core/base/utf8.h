// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace levelbar {

// Code points in well-formed UTF-8 (RFC 3629: no overlong forms, no surrogates); nothing when
// the text is not well formed.
[[nodiscard]] std::optional<std::size_t> codePoints(std::string_view text);

// Takes the first character off a text that is not empty; nothing when it is not well formed
// (then one byte is taken).
std::optional<char32_t> takeCodePoint(std::string_view& text);

// C0 and C1 controls and DEL. With `allowBreaks`, line feed and tab are let through.
[[nodiscard]] bool holdsControl(std::string_view text, bool allowBreaks);

// The text on one line and well formed: control characters, line and paragraph separators (U+2028,
// U+2029) and broken bytes become U+FFFD.
[[nodiscard]] std::string oneLine(std::string_view text);

} // namespace levelbar
