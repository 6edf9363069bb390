// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/strength_worlds.h"

#include "tests/support/random.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace levelbar::tests {

namespace {

// The share of 1RM that allows so many reps, by published equations (their coefficients: see
// core/strength/equations.h), scaled so that one rep is the maximum.
enum class Curve { Reynolds, Epley, Brzycki, Desgorces, Wathen, Mayhew, Blend };

double plainCurve(Curve curve, double reps)
{
    switch (curve) {
    case Curve::Reynolds:
        return 0.5551 * std::exp(-0.0723 * reps) + 0.4847;
    case Curve::Epley:
        return 1.0 / (1.0 + (reps - 1.0) / 30.0);
    case Curve::Brzycki:
        return std::max(0.15, (37.0 - reps) / 36.0);
    case Curve::Desgorces:
        return 0.837677 * std::exp(-0.0338 * reps) + 0.176846;
    case Curve::Wathen:
        return 0.488 + 0.538 * std::exp(-0.075 * reps);
    case Curve::Mayhew:
        return 0.522 + 0.419 * std::exp(-0.055 * reps);
    case Curve::Blend:
        return 0.5 * std::pow(reps, -0.10) + 0.5 * (0.837677 * std::exp(-0.0338 * reps) + 0.176846);
    }
    return 1.0;
}

double shareFor(Curve curve, double reps)
{
    return reps <= 1.0 ? 1.0 : plainCurve(curve, reps) / plainCurve(curve, 1.0);
}

double repsAt(Curve curve, double share, double factor)
{
    if (share >= 1.0) {
        return 1.0 - (share - 1.0) / 0.04 * factor;
    }
    double low = 1.0;
    double high = 45.0;
    for (int step = 0; step < 40; ++step) {
        const double middle = 0.5 * (low + high);
        (shareFor(curve, middle) > share ? low : high) = middle;
    }
    return 1.0 + (low - 1.0) * factor;
}

struct Setting {
    std::string_view name;
    Curve curve;
    double sessionsPerWeek; // 0: a few in all
    double daySpread;
    double factorSpread; // of ln
    double fatigue;      // reps lost per set
    double missing;      // share of reserves not told
    std::vector<int> reps;
    std::vector<int> reserve;
};

const Setting& settingOf(World world)
{
    static const std::array<Setting, kWorlds.size()> kSettings = {{
        {"gym", Curve::Wathen, 2, 0.03, 0.25, 0.4, 0.15, {5, 6, 8, 10}, {1, 2, 3}},
        {"linear", Curve::Reynolds, 3, 0.015, 0.20, 0.3, 0.05, {5, 8, 10}, {1, 2, 3}},
        {"plateau", Curve::Epley, 2, 0.025, 0.22, 0.8, 0.10, {8, 10, 12}, {0, 1, 2}},
        {"layoff", Curve::Brzycki, 2, 0.020, 0.20, 0.5, 0.10, {4, 6, 8, 10}, {1, 2, 3}},
        {"biased", Curve::Blend, 2, 0.025, 0.22, 0.4, 0.25, {5, 6, 8, 10}, {1, 2, 3, 4}},
        {"easy", Curve::Desgorces, 2, 0.030, 0.25, 0.2, 0.50, {8, 10, 12, 15}, {4, 5, 6, 8}},
        {"heavy", Curve::Wathen, 2, 0.025, 0.22, 0.5, 0.10, {3, 5, 8, 10}, {0, 1, 2}},
        {"sparse", Curve::Mayhew, 0.28, 0.025, 0.25, 0.5, 0.10, {1, 2, 3, 5}, {0, 0, 1}},
        {"few", Curve::Desgorces, 0, 0.025, 0.25, 0.5, 0.10, {5, 8, 10}, {1, 2, 3}},
    }};
    return kSettings.at(static_cast<std::size_t>(world));
}

// How a person tells the reserve.
struct Telling {
    double bias = 0.0;
    double scale = 1.0;
    std::optional<double> spread = 0.6; // nothing: grows with the reserve
};

struct Person {
    SimulatedMember result;
    std::vector<double> path; // true ln change by day
    std::vector<bool> trains; // by day
    Curve curve = Curve::Wathen;
    double base = 0.0; // ln barbell 1RM on the first day
    double factor = 1.0;
    double armFactor = 1.0;
    double tilt = 0.0; // ln(right / left)
    Telling telling;
};

constexpr double kArmShare = 0.4; // single-arm 1RM over barbell's

double byLevel(Experience experience, std::array<double, 3> values)
{
    return values.at(static_cast<std::size_t>(experience) - 1);
}

double range(Random& random, Experience e, std::array<double, 3> low, std::array<double, 3> high)
{
    return random.uniform(byLevel(e, low), byLevel(e, high));
}

std::vector<double> straight(double perWeek, int days)
{
    std::vector<double> path(static_cast<std::size_t>(days) + 1);
    for (std::size_t d = 0; d < path.size(); ++d) {
        path[d] = perWeek * static_cast<double>(d) / 7.0;
    }
    return path;
}

std::vector<double> saturating(Random& random, Experience e, int days)
{
    const double gain = range(random, e, {0.12, 0.05, 0.0}, {0.30, 0.15, 0.06});
    const double weeks = random.uniform(8.0, 18.0);
    const double keep = std::exp(-1.0 / 21.0);
    std::vector<double> path;
    double wander = 0.0;
    for (int d = 0; d <= days; ++d) {
        path.push_back(gain * (1.0 - std::exp(-d / 7.0 / weeks)) + wander);
        wander = keep * wander + random.normal() * 0.010 * std::sqrt(1.0 - keep * keep);
    }
    return path;
}

std::vector<double> withBreaks(Random& random, Experience e, int days, std::vector<bool>& trains)
{
    const double gain = range(random, e, {0.004, 0.002, 0.0}, {0.010, 0.005, 0.003});
    std::vector<std::pair<int, int>> breaks;
    if (days >= 56) {
        const int count = days < 200 ? 1 : 1 + random.below(2);
        for (int i = 0; i < count; ++i) {
            const int from = 14 + random.below(std::max(1, days - 25 - 14));
            const double weeks = days > 100 ? random.uniform(3.0, 8.0) : random.uniform(2.0, 3.5);
            breaks.emplace_back(from, from + static_cast<int>(7.0 * weeks));
        }
    }
    std::vector<double> path = {0.0};
    double strength = 0.0;
    double peak = 0.0;
    for (int d = 1; d <= days; ++d) {
        const auto off = std::find_if(breaks.begin(), breaks.end(), [d](const auto& gap) {
            return gap.first <= d && d < gap.second;
        });
        if (off != breaks.end()) {
            trains[static_cast<std::size_t>(d)] = false;
            strength -= d - off->first > 14 ? 0.008 / 7.0 : 0.0;
        } else {
            strength += (strength < peak - 1e-9 ? 0.020 : gain) / 7.0;
            peak = std::max(peak, strength);
        }
        path.push_back(strength);
    }
    return path;
}

std::vector<double> drifting(Random& random, World world, Experience e, int days)
{
    double slope =
        random.normal(byLevel(e, {0.008, 0.0035, 0.001}), byLevel(e, {0.004, 0.003, 0.002}));
    const double unrest = world == World::Easy ? 0.0003 : 0.0008;
    std::vector<double> path = {0.0};
    for (int d = 1; d <= days; ++d) {
        if (d % 7 == 0) {
            slope = 0.97 * slope + 0.03 * 0.001 + random.normal() * unrest;
        }
        path.push_back(path.back() + slope / 7.0);
    }
    return path;
}

std::vector<double> jumping(Random& random, Experience e, int days)
{
    double slope = byLevel(e, {0.007, 0.003, 0.001}) + random.normal(0.0, 0.003);
    std::vector<double> path = {0.0};
    for (int d = 1; d <= days; ++d) {
        if (random.chance(1.0 / 70.0)) {
            slope = byLevel(e, {0.006, 0.002, 0.0005}) + random.normal(0.0, 0.004);
        }
        path.push_back(path.back() + slope / 7.0);
    }
    return path;
}

std::vector<double>
pathOf(Random& random, World world, Experience e, int days, std::vector<bool>& trains)
{
    switch (world) {
    case World::Linear:
    case World::Few:
        return straight(range(random, e, {0.004, 0.001, -0.001}, {0.012, 0.006, 0.003}), days);
    case World::Plateau:
        return saturating(random, e, days);
    case World::Layoff:
        return withBreaks(random, e, days, trains);
    case World::Gym:
    case World::Biased:
    case World::Easy:
        return drifting(random, world, e, days);
    case World::Heavy:
        return jumping(random, e, days);
    case World::Sparse: {
        std::vector<double> path =
            straight(range(random, e, {0.004, 0.001, -0.001}, {0.010, 0.005, 0.003}), days);
        double walk = 0.0;
        for (std::size_t d = 1; d < path.size(); ++d) {
            walk += random.normal() * 0.004 / std::sqrt(7.0);
            path[d] += walk;
        }
        return path;
    }
    }
    return {};
}

double dayEffect(Random& random, World world, double spread)
{
    switch (world) {
    case World::Gym: // t with 3 degrees of freedom, scaled to the spread
        return spread * random.studentThree() / std::sqrt(3.0);
    case World::Heavy:
        return spread * random.studentThree() - (random.chance(0.05) ? 0.10 : 0.0);
    default:
        return spread * random.normal();
    }
}

Telling tellingOf(Random& random, World world)
{
    switch (world) {
    case World::Gym:
        return {random.normal(-0.6, 0.6), 1.0, 0.7};
    case World::Biased:
        return {random.normal(-0.6, 1.2), std::exp(random.normal(-0.1, 0.25)), 0.8};
    case World::Easy:
        return {0.0, std::exp(random.normal(-0.15, 0.2)), std::nullopt};
    default:
        return {random.normal(-0.3, 0.3), 1.0, 0.6};
    }
}

std::optional<Reserve> tell(Random& random, const Telling& telling, double missing, double left)
{
    if (random.chance(missing)) {
        return std::nullopt;
    }
    const double spread = telling.spread.value_or(0.3 + 0.25 * left);
    const double named = left * telling.scale + telling.bias * std::min(1.0, left / 2.0) +
                         random.normal() * spread * std::min(1.0, 0.4 + 0.3 * left);
    return Reserve{10 * static_cast<int>(std::max(0.0, std::round(named)))};
}

std::vector<int> trainingDays(Random& random, World world, const Setting& setting, int days)
{
    std::vector<int> found;
    if (world == World::Few) {
        const int count = 3 + random.below(4);
        for (int i = 0; i < count; ++i) {
            const double even = (days - 1.0) * i / (count - 1.0);
            const double day = even + random.uniform(-0.2, 0.2) * days / count;
            found.push_back(static_cast<int>(std::clamp(std::round(day), 0.0, days - 1.0)));
        }
    } else if (world == World::Sparse) {
        for (int day = 0; day < days; day += 19 + random.below(12)) {
            found.push_back(day);
        }
    } else {
        for (double day = 0.0; day < days - 1e-6; day += 7.0 / setting.sessionsPerWeek) {
            if (!random.chance(0.1)) {
                found.push_back(static_cast<int>(day));
            }
        }
    }
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found.empty() ? std::vector<int>{0} : found;
}

PerformedSet
makeSet(int day, int number, double kilograms, int reps, std::optional<Reserve> reserve)
{
    PerformedSet set;
    set.day = Day{20000 + day};
    set.number = number;
    set.load = Mass::ofKilograms(kilograms);
    set.reps = reps;
    set.reserve = reserve;
    return set;
}

// Double progression of the plateau world: a rep more when two sets hit the mark, 2.5 kg more
// after twelve.
struct Progression {
    double load = 0.0;
    int reps = 8;

    void after(int hits)
    {
        reps += hits >= 2 ? 1 : 0;
        if (reps > 12) {
            reps = 8;
            load += 2.5;
        }
        reps = hits == 0 ? std::max(6, reps - 1) : reps;
    }
};

class Diary {
public:
    Diary(Random& random, World world, Person& person)
        : m_random(random)
        , m_world(world)
        , m_setting(settingOf(world))
        , m_person(person)
    {
    }

    void write(int days)
    {
        int session = 0;
        for (const int day : trainingDays(m_random, m_world, m_setting, days)) {
            if (m_person.trains[static_cast<std::size_t>(day)] || day == 0) {
                m_strength = m_person.base + m_person.path[static_cast<std::size_t>(day)];
                m_day = dayEffect(m_random, m_world, m_setting.daySpread);
                pressBarbell(day);
                const bool isArmDay =
                    m_world == World::Gym || m_setting.sessionsPerWeek < 1.0 ||
                    session % static_cast<int>(std::lround(m_setting.sessionsPerWeek)) == 0;
                if (isArmDay) {
                    pressArms(day);
                }
                ++session;
            }
        }
    }

private:
    double noise(int reps) { return m_random.normal() * (0.5 + 0.035 * reps); }

    void pressBarbell(int day)
    {
        int reps = m_random.pick<int>(m_setting.reps);
        const int planned = m_random.pick<int>(m_setting.reserve);
        double load = 0.0;
        if (m_world == World::Plateau) {
            if (m_progression.load == 0.0) {
                const double first = std::exp(m_strength) * shareFor(m_person.curve, 10.0);
                m_progression.load = std::max(10.0, std::round(first / 2.5) * 2.5);
            }
            load = m_progression.load;
            reps = m_progression.reps;
        } else {
            const double known = m_random.chance(0.5) ? m_person.factor : 1.0;
            const double share = shareFor(m_person.curve, 1.0 + (reps + planned - 1.0) / known);
            const double guess = std::exp(m_strength + m_random.normal(-0.01, 0.04)) * share;
            load = std::max(5.0, std::round(guess / 2.5) * 2.5);
        }
        const int sets = m_world == World::Sparse ? 1 : (m_world == World::Few ? 2 : 3);
        int hits = 0;
        for (int k = 0; k < sets; ++k) {
            const double possible =
                repsAt(m_person.curve, load / std::exp(m_strength + m_day), m_person.factor) -
                m_setting.fatigue * k + noise(reps);
            if (possible < 1.0) {
                continue;
            }
            int done = std::min(reps, static_cast<int>(possible));
            const auto reserve =
                tell(m_random, m_person.telling, m_setting.missing, possible - done);
            if (m_world == World::Heavy && m_random.chance(0.015)) {
                constexpr std::array kSlips = {-5, 5, 10};
                done = std::max(1, done + m_random.pick<int>(kSlips));
            }
            m_person.result.barbell.push_back(makeSet(day, k + 1, load, done, reserve));
            hits += done >= reps ? 1 : 0;
        }
        m_progression.after(hits);
    }

    void pressArms(int day)
    {
        constexpr std::array kReps = {8, 10, 12};
        int reps = m_random.pick<int>(kReps);
        reps = m_world == World::Sparse ? 5 : (m_world == World::Easy ? 12 : reps);
        const double arm = m_strength + std::log(kArmShare);
        const double guess = std::exp(arm) * shareFor(m_person.curve, reps + 2.0);
        const double load = std::max(4.0, std::round(guess / 2.0) * 2.0);
        const int sets = m_world == World::Gym ? 3 : 2;
        for (int k = 0; k < sets; ++k) {
            for (const double side : {-0.5, 0.5}) {
                const double level = arm + side * m_person.tilt + m_day + 0.015 * m_random.normal();
                const double possible =
                    repsAt(m_person.curve, load / std::exp(level), m_person.armFactor) -
                    m_setting.fatigue * k + noise(reps);
                if (possible < 1.0) {
                    continue;
                }
                const int most = m_world == World::Easy ? reps : reps + 2;
                const int done = std::min(most, static_cast<int>(possible));
                const auto reserve =
                    tell(m_random, m_person.telling, m_setting.missing, possible - done);
                auto& sideSets = side < 0.0 ? m_person.result.left : m_person.result.right;
                sideSets.push_back(makeSet(day, k + 1, load, done, reserve));
            }
        }
    }

    Random& m_random;
    World m_world;
    const Setting& m_setting;
    Person& m_person;
    Progression m_progression;
    double m_strength = 0.0;
    double m_day = 0.0;
};

Person makePerson(Random& random, World world, int days)
{
    Person person;
    const Setting& setting = settingOf(world);
    person.result.experience = static_cast<Experience>(1 + random.below(3));
    person.trains.assign(static_cast<std::size_t>(days) + 1, true);
    person.path = pathOf(random, world, person.result.experience, days, person.trains);
    person.curve = setting.curve;
    if (world == World::Gym) { // people differ in the shape of their curve, too
        constexpr std::array kCurves = {Curve::Wathen, Curve::Epley, Curve::Blend};
        person.curve = random.pick<Curve>(kCurves);
    }
    constexpr std::array kStarts = {35.0, 75.0};
    person.base = std::log(random.pick<double>(kStarts)) + random.normal(0.0, 0.22);
    person.factor = std::exp(random.normal(0.0, setting.factorSpread));
    person.armFactor = person.factor * std::exp(random.normal(0.0, 0.07));
    const bool isTilted = random.chance(0.2);
    const double sign = random.chance(0.5) ? 1.0 : -1.0;
    person.tilt = (isTilted ? sign * random.uniform(0.12, 0.25) : 0.0) + random.normal(0.0, 0.03);
    person.telling = tellingOf(random, world);
    return person;
}

} // namespace

std::string_view worldName(World world)
{
    return settingOf(world).name;
}

std::vector<SimulatedMember> simulate(World world, int weeks, int members, std::uint64_t seed)
{
    Random random(seed * 1000003U + static_cast<std::uint64_t>(world) * 101U +
                  static_cast<std::uint64_t>(weeks));
    const int days = 7 * weeks;
    std::vector<SimulatedMember> all;
    for (int i = 0; i < members; ++i) {
        Person person = makePerson(random, world, days);
        Diary(random, world, person).write(days);
        SimulatedMember& member = person.result;
        member.today = Day{20000 + days};
        const int back = std::min(8, weeks - 1);
        member.lookBackWeeks = back;
        member.barbellLevel = person.base + person.path.back();
        member.leftLevel = member.barbellLevel + std::log(kArmShare) - 0.5 * person.tilt;
        member.rightLevel = member.leftLevel + person.tilt;
        const double past =
            person.path[person.path.size() - 1 - 7 * static_cast<std::size_t>(back)];
        member.slope = (person.path.back() - past) / back;
        const auto loadFor = [&](double reps) {
            return member.barbellLevel +
                   std::log(shareFor(person.curve, 1.0 + (reps - 1.0) / person.factor));
        };
        member.logLoadForTen = loadFor(10.0);
        member.logLoadForSeven = loadFor(7.0);
        all.push_back(std::move(member));
    }
    return all;
}

} // namespace levelbar::tests
