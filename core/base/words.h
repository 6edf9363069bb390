// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"

#include <array>
#include <string>
#include <string_view>
#include <utility>

namespace levelbar {

// The words of an enumeration in the outside face, one table a type, read both ways.
template <typename T, std::size_t N> using Words = std::array<std::pair<T, std::string_view>, N>;

template <typename T, std::size_t N>
[[nodiscard]] constexpr std::string_view wordOf(const Words<T, N>& words, T value)
{
    for (const auto& [known, word] : words) {
        if (known == value) {
            return word;
        }
    }
    return {};
}

// NotOneOf, with all allowed words, when the text is none of them (case counts).
template <typename T, std::size_t N>
[[nodiscard]] Result<T> parseWord(const Words<T, N>& words, std::string_view text)
{
    std::string all;
    for (const auto& [known, word] : words) {
        if (word == text) {
            return known;
        }
        all += (all.empty() ? "" : ", ") + std::string(word);
    }
    return refuse(FaultCode::NotOneOf, {excerpt(text), all});
}

} // namespace levelbar
