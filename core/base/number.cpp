// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/number.h"

#include <charconv>

namespace levelbar {

namespace {

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

// Digits with at most one point and one leading minus; at least one digit.
bool looksLikeNumber(std::string_view text)
{
    if (!text.empty() && text.front() == '-') {
        text.remove_prefix(1);
    }
    bool hasDigit = false;
    bool hasPoint = false;
    for (const char c : text) {
        if (isDigit(c)) {
            hasDigit = true;
        } else if (c == '.' && !hasPoint) {
            hasPoint = true;
        } else {
            return false;
        }
    }
    return hasDigit;
}

} // namespace

Result<std::int64_t> parseWhole(std::string_view text, std::int64_t lowest, std::int64_t highest)
{
    std::int64_t value = 0;
    const char* const end = text.data() + text.size();
    const auto [at, error] = std::from_chars(text.data(), end, value);
    if (text.empty() || error != std::errc() || at != end || value < lowest || value > highest) {
        return refuse(FaultCode::NotAWholeNumber,
                      {excerpt(text), std::to_string(lowest), std::to_string(highest)});
    }
    return value;
}

Result<std::int64_t>
parseDecimal(std::string_view text, int decimals, std::int64_t lowest, std::int64_t highest)
{
    if (!looksLikeNumber(text)) {
        return refuse(FaultCode::NotANumber, {excerpt(text)});
    }
    const bool isNegative = text.front() == '-';
    const std::string_view digits = text.substr(isNegative ? 1 : 0);
    const std::size_t point = digits.find('.');
    const std::string_view whole = digits.substr(0, point);
    std::string_view fraction =
        point == std::string_view::npos ? std::string_view() : digits.substr(point + 1);
    while (!fraction.empty() && fraction.back() == '0') {
        fraction.remove_suffix(1);
    }
    if (fraction.size() > static_cast<std::size_t>(decimals)) {
        return refuse(FaultCode::TooManyDecimals, {excerpt(text), std::to_string(decimals)});
    }
    std::string all(whole);
    all += fraction;
    all.append(static_cast<std::size_t>(decimals) - fraction.size(), '0');
    std::int64_t value = 0;
    const auto [at, error] = std::from_chars(all.data(), all.data() + all.size(), value);
    value = isNegative ? -value : value;
    if (error != std::errc() || value < lowest || value > highest) {
        return refuse(
            FaultCode::OutOfRange,
            {excerpt(text), decimalText(lowest, decimals), decimalText(highest, decimals)});
    }
    return value;
}

std::string decimalText(std::int64_t units, int decimals)
{
    const bool isNegative = units < 0;
    // The magnitude as unsigned: the most negative value has no positive twin.
    auto magnitude = static_cast<std::uint64_t>(units);
    magnitude = isNegative ? 0U - magnitude : magnitude;
    std::string digits = std::to_string(magnitude);
    const auto places = static_cast<std::size_t>(decimals);
    if (digits.size() <= places) {
        digits.insert(0, places + 1 - digits.size(), '0');
    }
    if (places > 0) {
        digits.insert(digits.size() - places, ".");
        digits.erase(digits.find_last_not_of('0') + 1);
        if (digits.back() == '.') {
            digits.pop_back();
        }
    }
    return isNegative ? "-" + digits : digits;
}

} // namespace levelbar
