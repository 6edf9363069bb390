// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_cut.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace levelbar {

namespace {

constexpr double kStay = 0.1; // how far below the cut a listed name may fall and stay
constexpr double kNoCut = 1.0 - kFalseShare; // the cut when a list is empty

// How many of the surest are in the cut: as many as keep the whole list, those who stay included,
// at kFalseShare on average.
std::size_t cutOf(const std::vector<ListCandidate>& ranked)
{
    std::size_t cut = 0;
    std::size_t stay = 0; // the first not looked at for staying
    double falseSum = 0.0;
    double listed = 0.0;
    for (std::size_t k = 0; k < ranked.size(); ++k) {
        const double p = ranked[k].probability;
        // Newly in the cut: those who stayed on an earlier week's account are counted already.
        if (k >= stay || !ranked[k].wasListed) {
            falseSum += 1.0 - p;
            listed += 1.0;
        }
        for (stay = std::max(stay, k + 1);
             stay < ranked.size() && ranked[stay].probability > p - kStay;
             ++stay) {
            falseSum += ranked[stay].wasListed ? 1.0 - ranked[stay].probability : 0.0;
            listed += ranked[stay].wasListed ? 1.0 : 0.0;
        }
        cut = falseSum <= kFalseShare * listed ? k + 1 : cut;
    }
    return cut;
}

} // namespace

std::vector<bool> listOf(const std::vector<ListCandidate>& candidates)
{
    std::vector<std::size_t> places(candidates.size());
    std::iota(places.begin(), places.end(), std::size_t{0});
    std::stable_sort(places.begin(), places.end(), [&](std::size_t a, std::size_t b) {
        return candidates[a].probability > candidates[b].probability;
    });
    std::vector<ListCandidate> ranked;
    ranked.reserve(places.size());
    for (const std::size_t place : places) {
        ranked.push_back(candidates[place]);
    }
    const std::size_t cut = cutOf(ranked);
    const double lowest = cut > 0 ? ranked[cut - 1].probability : kNoCut;
    std::vector<bool> listed(candidates.size(), false);
    for (std::size_t k = 0; k < ranked.size(); ++k) {
        listed[places[k]] =
            k < cut || (ranked[k].wasListed && ranked[k].probability > lowest - kStay);
    }
    return listed;
}

} // namespace levelbar
