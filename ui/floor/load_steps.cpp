// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/load_steps.h"

#include "core/gym/available_loads.h"

#include <algorithm>
#include <cctype>

namespace levelbar::ui {

namespace {

constexpr std::int64_t kPoundStep = 5000;
constexpr std::int64_t kBarStep = 2500;
constexpr std::int64_t kLightHandStep = 1000;
constexpr std::int64_t kHeavyHandStep = 2000;
constexpr std::int64_t kHeavyHandFrom = 10'000;
constexpr std::int64_t kHeaviestKilograms = 1'000'000; // what parseMass allows
constexpr std::int64_t kHeaviestPounds = 2'204'622;

std::int64_t handStepped(std::int64_t load, int direction)
{
    if (direction > 0) {
        return load + (load < kHeavyHandFrom ? kLightHandStep : kHeavyHandStep);
    }
    if (load > kHeavyHandFrom) {
        return std::max(load - kHeavyHandStep, kHeavyHandFrom);
    }
    return load - kLightHandStep;
}

} // namespace

Mass steppedLoad(const Mass& load, Implement implement, int direction)
{
    std::int64_t stepped = load.thousandths();
    if (load.unit() == MassUnit::Pound) {
        stepped += direction * kPoundStep;
    } else if (implement == Implement::Dumbbell || implement == Implement::Kettlebell) {
        stepped = handStepped(stepped, direction);
    } else {
        stepped += direction * kBarStep;
    }
    const std::int64_t heaviest =
        load.unit() == MassUnit::Pound ? kHeaviestPounds : kHeaviestKilograms;
    return Mass::ofThousandths(std::clamp<std::int64_t>(stepped, 0, heaviest), load.unit());
}

bool lacksLoad(const PlannedSet& planned, const Exercise* exercise)
{
    const bool isLifted = exercise == nullptr || exercise->load == LoadKind::External;
    return isLifted && planned.isNew && planned.load.thousandths() == 0;
}

Mass steppedLoad(const Mass& load, const Kit& kit, const Exercise& exercise, int direction)
{
    if (kit.isAssumed) {
        return steppedLoad(load, exercise.implement, direction);
    }
    const AvailableLoads loads(kit, exercise);
    if (!loads.lightest()) {
        return steppedLoad(load, exercise.implement, direction);
    }
    const auto next = direction > 0 ? loads.above(load) : loads.below(load);
    const bool isBare = !next && direction < 0 && exercise.load == LoadKind::Added;
    return next ? next->load : isBare ? Mass::ofThousandths(0, load.unit()) : load;
}

Result<Mass> parseTypedLoad(std::string_view text, MassUnit unit)
{
    std::string number;
    std::string word;
    for (const char letter : text) {
        const auto code = static_cast<unsigned char>(letter);
        if (std::isspace(code) != 0) {
            continue;
        }
        const bool isPart = std::isdigit(code) != 0 || letter == '.' || letter == ',';
        if (isPart && word.empty()) {
            number += letter == ',' ? '.' : letter;
        } else {
            word += static_cast<char>(std::tolower(code));
        }
    }
    if (!word.empty()) {
        const auto typed = parseMassUnit(word);
        if (!typed) {
            return tl::unexpected(typed.error());
        }
        unit = *typed;
    }
    if (number.empty()) {
        return refuse(FaultCode::Empty);
    }
    return parseMass(number, unit);
}

} // namespace levelbar::ui
