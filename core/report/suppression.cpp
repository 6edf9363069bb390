// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/suppression.h"

#include <cassert>
#include <cstddef>
#include <optional>

namespace levelbar {

namespace {

std::optional<std::size_t> smallestShown(std::span<const int> sizes, const std::vector<bool>& gone)
{
    std::optional<std::size_t> smallest;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        if (!gone[i] && (!smallest || sizes[i] < sizes[*smallest])) {
            smallest = i;
        }
    }
    return smallest;
}

} // namespace

std::vector<bool>
withheldGroups(std::span<const int> sizes, const std::vector<bool>& already, int least)
{
    assert(already.empty() || already.size() == sizes.size());
    std::vector<bool> gone(sizes.size(), false);
    int groups = 0;
    int people = 0;
    const auto withhold = [&](std::size_t place) {
        gone[place] = true;
        people += sizes[place];
        groups += sizes[place] > 0 ? 1 : 0; // an empty one hides nobody
    };
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        if (sizes[i] < least || (!already.empty() && already[i])) {
            withhold(i);
        }
    }
    while (people > 0 && (groups < 2 || people < least)) {
        const auto next = smallestShown(sizes, gone);
        if (!next) {
            break;
        }
        withhold(*next);
    }
    return gone;
}

} // namespace levelbar
