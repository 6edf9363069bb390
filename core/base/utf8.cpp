// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/utf8.h"

#include <cstdint>

namespace levelbar {

namespace {

struct Decoded {
    std::uint32_t codePoint = 0;
    std::size_t length = 0; // bytes taken; 0 when malformed
};

unsigned byteAt(std::string_view text, std::size_t at)
{
    return static_cast<unsigned char>(text[at]);
}

Decoded decode(std::string_view text)
{
    const unsigned first = byteAt(text, 0);
    if (first < 0x80U) {
        return {first, 1};
    }
    std::size_t length = 0;
    std::uint32_t value = 0;
    std::uint32_t least = 0;
    if ((first & 0xE0U) == 0xC0U) {
        length = 2, value = first & 0x1FU, least = 0x80U;
    } else if ((first & 0xF0U) == 0xE0U) {
        length = 3, value = first & 0x0FU, least = 0x800U;
    } else if ((first & 0xF8U) == 0xF0U) {
        length = 4, value = first & 0x07U, least = 0x10000U;
    }
    if (length == 0 || text.size() < length) {
        return {};
    }
    for (std::size_t i = 1; i < length; ++i) {
        if ((byteAt(text, i) & 0xC0U) != 0x80U) {
            return {};
        }
        value = (value << 6U) | (byteAt(text, i) & 0x3FU);
    }
    const bool isSurrogate = value >= 0xD800U && value <= 0xDFFFU;
    return value < least || value > 0x10FFFFU || isSurrogate ? Decoded{} : Decoded{value, length};
}

} // namespace

std::optional<std::size_t> codePoints(std::string_view text)
{
    std::size_t count = 0;
    while (!text.empty()) {
        const Decoded decoded = decode(text);
        if (decoded.length == 0) {
            return std::nullopt;
        }
        text.remove_prefix(decoded.length);
        ++count;
    }
    return count;
}

std::optional<char32_t> takeCodePoint(std::string_view& text)
{
    const Decoded decoded = decode(text);
    text.remove_prefix(decoded.length == 0 ? 1 : decoded.length);
    return decoded.length == 0 ? std::nullopt
                               : std::optional(static_cast<char32_t>(decoded.codePoint));
}

bool holdsControl(std::string_view text, bool allowBreaks)
{
    while (!text.empty()) {
        const Decoded decoded = decode(text);
        if (decoded.length == 0) {
            return true;
        }
        const std::uint32_t c = decoded.codePoint;
        const bool isControl = c < 0x20U || (c >= 0x7FU && c <= 0x9FU);
        const bool isBreak = c == '\n' || c == '\t';
        if (isControl && !(allowBreaks && isBreak)) {
            return true;
        }
        text.remove_prefix(decoded.length);
    }
    return false;
}

std::string oneLine(std::string_view text)
{
    std::string line;
    line.reserve(text.size());
    while (!text.empty()) {
        const std::string_view before = text;
        const auto character = takeCodePoint(text);
        const bool breaks = !character || *character < 0x20 ||
                            (*character >= 0x7F && *character <= 0x9F) || *character == 0x2028 ||
                            *character == 0x2029;
        line += breaks ? "\uFFFD" : before.substr(0, before.size() - text.size());
    }
    return line;
}

} // namespace levelbar
