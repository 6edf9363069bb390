// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/strength_filter.h"

#include "core/strength/rep_curve.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace levelbar {

namespace {

// Places in the state. Difference and SideDay exist with sides, Fatigue only when it is learnt.
enum State : int { Level, Slope, Factor, Shape, Day, Past, Difference, SideDay };

constexpr double kMostFactor = 0.9;     // |ln factor| in the linearisation
constexpr double kMostShape = 0.5;      // |shape| in the linearisation
constexpr double kShapeReps = 8.0;      // where the shape does not matter
constexpr double kLeastShapeReps = 1.2; // below, ln(reps) runs away
constexpr double kMostEarlierSets = 4.0;
constexpr int kDampedFrom = 9; // iteration from which steps are halved

double square(double x)
{
    return x * x;
}

double median(std::vector<double>& values)
{
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    if (values.size() % 2 == 1) {
        return *middle;
    }
    return 0.5 * (*middle + *std::max_element(values.begin(), middle));
}

// A point in time: a day with sets, today, or the look-back.
struct Node {
    double weeks = 0.0;
    int first = 0; // sets [first, last)
    int last = 0;
    int day = -1; // index among the days with sets
    bool isPast = false;

    [[nodiscard]] bool hasSets() const { return last > first; }
};

struct Timeline {
    std::vector<Node> nodes;
    double freeGap = 0.0;
    int days = 0;
};

Timeline makeTimeline(const StrengthInput& input, const StrengthParameters& parameters)
{
    Timeline timeline;
    const auto& sets = input.sets;
    std::vector<double> gaps;
    for (int i = 0; i < static_cast<int>(sets.size());) {
        Node node{sets[static_cast<std::size_t>(i)].weeks, i, i, timeline.days++, false};
        while (node.last < static_cast<int>(sets.size()) &&
               sets[static_cast<std::size_t>(node.last)].weeks == node.weeks) {
            ++node.last;
        }
        if (!timeline.nodes.empty()) {
            gaps.push_back(node.weeks - timeline.nodes.back().weeks);
        }
        timeline.nodes.push_back(node);
        i = node.last;
    }
    const double usualGap = gaps.empty() ? 0.0 : median(gaps);
    timeline.freeGap = std::max(parameters.freeGap, 2.0 * usualGap);
    const double past = input.today - input.lookBack;
    for (const double weeks : {past, input.today}) {
        const auto at = std::lower_bound(timeline.nodes.begin(),
                                         timeline.nodes.end(),
                                         weeks - 1e-9,
                                         [](const Node& n, double w) { return n.weeks < w; });
        if (at == timeline.nodes.end() || at->weeks > weeks + 1e-9) {
            const int next = at == timeline.nodes.end() ? static_cast<int>(sets.size()) : at->first;
            timeline.nodes.insert(at, Node{weeks, next, next, -1, false});
        }
    }
    for (Node& node : timeline.nodes) {
        node.isPast = std::abs(node.weeks - past) < 1e-9;
    }
    return timeline;
}

// ln 1RM that a day's sets speak for: the median of what each says alone.
double dayGuess(const StrengthInput& input, const Node& node, const StrengthParameters& parameters)
{
    std::vector<double> values;
    for (int i = node.first; i < node.last; ++i) {
        const StrengthObservation& set = input.sets[static_cast<std::size_t>(i)];
        const bool isKnown = set.evidence == SetEvidence::Measured ||
                             set.evidence == SetEvidence::Limit ||
                             set.evidence == SetEvidence::Tested;
        const double reps = set.reps + (isKnown ? set.reserve : 2.0) +
                            parameters.fatigue * std::min(set.earlierSets, kMostEarlierSets);
        values.push_back(set.logLoad - std::log(repFraction(reps)));
    }
    return median(values);
}

// Each day's median with up to two neighbours on either side, those less than `reach` weeks away.
std::vector<double>
runningMedian(const std::vector<double>& weeks, const std::vector<double>& values, double reach)
{
    std::vector<double> smooth(values.size());
    std::vector<double> near;
    for (std::size_t k = 0; k < values.size(); ++k) {
        near.clear();
        const std::size_t from = k < 2 ? 0 : k - 2;
        for (std::size_t n = from; n < std::min(k + 3, values.size()); ++n) {
            if (std::abs(weeks[n] - weeks[k]) < reach) {
                near.push_back(values[n]);
            }
        }
        smooth[k] = median(near);
    }
    return smooth;
}

// A first guess of ln 1RM at every node: each day's median, smoothed over five days, joined by
// straight lines and flat outside.
std::vector<double> firstGuess(const StrengthInput& input,
                               const Timeline& timeline,
                               const StrengthParameters& parameters)
{
    std::vector<double> weeks;
    std::vector<double> levels;
    for (const Node& node : timeline.nodes) {
        if (node.hasSets()) {
            weeks.push_back(node.weeks);
            levels.push_back(dayGuess(input, node, parameters));
        }
    }
    const std::vector<double> smooth = runningMedian(weeks, levels, parameters.guessReach);
    std::vector<double> guess;
    guess.reserve(timeline.nodes.size());
    for (const Node& node : timeline.nodes) {
        const auto after = std::lower_bound(weeks.begin(), weeks.end(), node.weeks);
        const auto k = static_cast<std::size_t>(after - weeks.begin());
        if (after == weeks.end()) {
            guess.push_back(smooth.back());
        } else if (k == 0 || *after == node.weeks) {
            guess.push_back(smooth[k]);
        } else {
            const double share = (node.weeks - weeks[k - 1]) / (weeks[k] - weeks[k - 1]);
            guess.push_back(smooth[k - 1] + share * (smooth[k] - smooth[k - 1]));
        }
    }
    return guess;
}

// How the set compares with what the point predicts: the value read from it and the variance of
// its error on either side.
struct Reading {
    double reps = 0.0;
    double lowVariance = 0.0;  // when more reps were seen than predicted
    double highVariance = 0.0; // when fewer
};

// Spread is taken at the predicted reps: taken at the logged ones it would tie a set's weight to
// its own error. Rep noise: Mitter 2022 (0.7 reps at 90 %, 1.1 at 70 %); reserve noise: Hackett
// 2017, Refalo 2023.
Reading readSet(const StrengthObservation& set, double predicted, const StrengthParameters& p)
{
    const double reps = std::clamp(predicted, 1.0, 30.0);
    const double spread = 0.55 + 0.04 * reps + 0.5 * std::max(0.0, reps - 15.0);
    const double noise = square(spread);
    switch (set.evidence) {
    case SetEvidence::Measured:
    case SetEvidence::Limit: {
        const double left = std::max(0.0, reps - set.reps);
        const double named = 0.73 + 0.13 * std::min(left, 5.0) + 0.35 * std::max(0.0, left - 5.0);
        const double value = set.reps + set.reserve + (set.reserve > 0.0 ? p.reserveBias : 0.0);
        return {value, noise + square(named), noise + square(named)};
    }
    case SetEvidence::Tested: {
        // Its spread does not grow with the prediction: that nothing was left is known.
        const double tested = square(p.testedSpread);
        return {set.reps, tested, tested};
    }
    case SetEvidence::AtLeast:
        return {set.reps + p.atLeastReps, noise + square(p.atLeastSpread), noise + square(p.wide)};
    case SetEvidence::Rough:
        return {set.reps + 1.0, noise + square(p.atLeastSpread), noise + square(p.roughSpread)};
    case SetEvidence::AtMost:
        return {0.5, noise + square(p.wide), noise + square(p.atLeastSpread)};
    }
    return {};
}

template <bool kSides, bool kFatigue> class Filter {
    static constexpr int kSize = 6 + (kSides ? 2 : 0) + (kFatigue ? 1 : 0);
    static constexpr int kFatigueAt = kSize - 1;
    using Vector = std::array<double, static_cast<std::size_t>(kSize)>;
    using Matrix = std::array<Vector, static_cast<std::size_t>(kSize)>;

    struct NodeRecord {
        Vector predicted{};
        Matrix covariance{};
        double dayWeight = 1.0;
        // The way here from the node before: weeks, how much slope goes into level, how much is
        // kept, and the noise that is added.
        double weeks = 0.0;
        double mix = 0.0;
        double keep = 1.0;
        double levelNoise = 0.0;
        double crossNoise = 0.0;
        double slopeNoise = 0.0;
    };

    struct SetRecord {
        Vector gradient{};
        Vector gain{};
        double innovation = 0.0;
        double variance = 1.0;
    };

public:
    Filter(const StrengthInput& input, const StrengthParameters& parameters)
        : m_input(input)
        , m_parameters(parameters)
        , m_timeline(makeTimeline(input, parameters))
        , m_nodes(m_timeline.nodes.size())
        , m_sets(input.sets.size())
        , m_points(m_timeline.nodes.size())
    {
        const std::vector<double> guess = firstGuess(input, m_timeline, parameters);
        const double firstWeek = input.sets.front().weeks;
        if (input.start.size() == guess.size()) {
            m_points.assign(input.start.begin(), input.start.end());
        }
        for (std::size_t j = 0; j < guess.size(); ++j) {
            if (input.start.size() != guess.size()) {
                m_points[j].level = guess[j];
                m_points[j].fatigue = parameters.fatigue;
            }
            if (j > 0) {
                prepareMove(m_timeline.nodes[j].weeks - m_timeline.nodes[j - 1].weeks,
                            std::max(0.0, m_timeline.nodes[j - 1].weeks - firstWeek),
                            m_nodes[j]);
            }
        }
        m_firstLevel = guess.front();
    }

    StrengthFit fit(const FitOptions& options)
    {
        int iteration = 0;
        for (bool isDone = false; !isDone;) {
            ++iteration;
            forward();
            const bool isLast = iteration >= options.mostIterations;
            if (isLast && !options.endsSmoothed) {
                break;
            }
            isDone = backward(iteration >= kDampedFrom) < options.tolerance || isLast;
        }
        StrengthFit result = report(iteration);
        if (options.wantsPath) {
            result.path = smoothedPath(result.levelVariance - m_covariance[Level][Level]);
        }
        return result;
    }

private:
    void start()
    {
        const StrengthParameters& p = m_parameters;
        m_state = {};
        m_covariance = {};
        m_state[Level] = m_firstLevel;
        m_state[Slope] = p.firstSlope;
        m_state[Factor] = m_input.factor.mean;
        m_covariance[Level][Level] = square(p.startSpread);
        m_covariance[Slope][Slope] = square(p.firstSlopeSpread);
        m_covariance[Factor][Factor] = m_input.factor.variance;
        m_covariance[Shape][Shape] = square(p.shapeSpread);
        if (m_input.level) {
            const double own = 1.0 / square(p.startSpread);
            const double related = 1.0 / m_input.level->variance;
            m_state[Level] = (own * m_firstLevel + related * m_input.level->mean) / (own + related);
            m_covariance[Level][Level] = 1.0 / (own + related);
        }
        if constexpr (kSides) {
            m_covariance[Difference][Difference] = square(p.sideSpread);
        }
        if constexpr (kFatigue) {
            m_state[kFatigueAt] = p.fatigue;
            m_covariance[kFatigueAt][kFatigueAt] = square(p.fatigueSpread);
        }
    }

    // The damped local linear trend between two nodes, exact in continuous time; the same in
    // every iteration.
    void prepareMove(double weeks, double sinceFirst, NodeRecord& record) const
    {
        const StrengthParameters& p = m_parameters;
        const double tau = p.slopeMemory;
        const double keep = std::exp(-weeks / tau);
        const double walk = square(p.slopeWalk);
        record.weeks = weeks;
        record.keep = keep;
        record.mix = tau * (1.0 - keep);
        record.levelNoise = walk * weeks * weeks * weeks / 3.0;
        record.crossNoise = walk * weeks * weeks / 2.0;
        record.slopeNoise = walk * weeks;
        if (weeks / tau >= 0.02) { // below, the exact form cancels to nothing
            record.slopeNoise = walk * tau / 2.0 * (1.0 - keep * keep);
            record.crossNoise = walk * tau * tau / 2.0 * square(1.0 - keep);
            record.levelNoise =
                walk * tau * tau *
                (weeks - 2.0 * tau * (1.0 - keep) + tau / 2.0 * (1.0 - keep * keep));
        }
        record.levelNoise += square(p.levelWalk) * weeks;
        // The extra walk of the first weeks, summed over this stretch.
        record.levelNoise += square(p.learningWalk) * p.learningWeeks *
                             (std::exp(-sinceFirst / p.learningWeeks) -
                              std::exp(-(sinceFirst + weeks) / p.learningWeeks));
    }

    void move(const NodeRecord& record)
    {
        const double late = m_parameters.lateSlope;
        m_state[Level] += late * record.weeks + (m_state[Slope] - late) * record.mix;
        m_state[Slope] = late + (m_state[Slope] - late) * record.keep;
        for (int c = 0; c < kSize; ++c) {
            m_covariance[Level][at(c)] += record.mix * m_covariance[Slope][at(c)];
            m_covariance[Slope][at(c)] *= record.keep;
        }
        for (int r = 0; r < kSize; ++r) {
            m_covariance[at(r)][Level] += record.mix * m_covariance[at(r)][Slope];
            m_covariance[at(r)][Slope] *= record.keep;
        }
        m_covariance[Level][Level] += record.levelNoise;
        m_covariance[Level][Slope] += record.crossNoise;
        m_covariance[Slope][Level] += record.crossNoise;
        m_covariance[Slope][Slope] += record.slopeNoise;
        if constexpr (kSides) {
            m_covariance[Difference][Difference] += square(m_parameters.sideWalk) * record.weeks;
        }
    }

    // What a break costs, counted from the last day with sets.
    void takeBreak(const Node& node)
    {
        const StrengthParameters& p = m_parameters;
        if (!m_hasTrained) {
            return;
        }
        const double excess =
            std::clamp(node.weeks - m_lastTrained - m_timeline.freeGap, 0.0, p.longestBreak);
        const double growth = excess - m_excess;
        m_excess = excess;
        if (growth > 0.0) {
            m_state[Level] -= p.breakLoss * growth;
            m_covariance[Level][Level] += square(p.breakLossSpread) * growth;
        }
        if (node.hasSets() && excess > 0.0) {
            m_state[Slope] += p.regain;
            m_covariance[Slope][Slope] += square(p.regainSpread);
        }
    }

    void forget(int place)
    {
        m_state[at(place)] = 0.0;
        for (int c = 0; c < kSize; ++c) {
            m_covariance[at(place)][at(c)] = 0.0;
            m_covariance[at(c)][at(place)] = 0.0;
        }
    }

    void enterDay(const Node& node, double weight)
    {
        m_lastTrained = node.weeks;
        m_hasTrained = true;
        m_excess = 0.0;
        const StrengthParameters& p = m_parameters;
        if (m_input.days.empty()) {
            m_covariance[Day][Day] = square(p.daySpread) / weight;
        } else {
            const NormalPrior& day = m_input.days[static_cast<std::size_t>(node.day)];
            m_state[Day] = day.mean;
            m_covariance[Day][Day] = day.variance / weight;
        }
        if constexpr (kSides) {
            m_covariance[SideDay][SideDay] = square(p.sideDaySpread);
        }
    }

    void forward()
    {
        start();
        m_hasTrained = false;
        m_excess = 0.0;
        for (std::size_t j = 0; j < m_nodes.size(); ++j) {
            const Node& node = m_timeline.nodes[j];
            NodeRecord& record = m_nodes[j];
            if (j > 0) {
                move(record);
                takeBreak(node);
                forget(Day);
                if constexpr (kSides) {
                    forget(SideDay);
                }
            }
            if (node.hasSets()) {
                enterDay(node, record.dayWeight);
            }
            record.predicted = m_state;
            record.covariance = m_covariance;
            m_curveIsFresh = false;
            for (int i = node.first; i < node.last; ++i) {
                update(static_cast<std::size_t>(i), m_points[j]);
            }
            if (node.isPast) {
                rememberLevel();
            }
        }
    }

    void rememberLevel()
    {
        m_state[Past] = m_state[Level];
        m_covariance[Past] = m_covariance[Level];
        for (int c = 0; c < kSize; ++c) {
            m_covariance[at(c)][Past] = m_covariance[at(c)][Level];
        }
        m_covariance[Past][Past] = m_covariance[Level][Level];
    }

    // The part of the prediction that sets of one load and side share.
    void readCurve(const StrengthObservation& set, const StrengthPoint& point)
    {
        if (m_curveIsFresh && set.logLoad == m_curveLoad && set.side == m_curveSide) {
            return;
        }
        m_curveIsFresh = true;
        m_curveLoad = set.logLoad;
        m_curveSide = set.side;
        const double level = point.level + set.side * point.difference;
        const double fraction = std::exp(set.logLoad - level);
        const double reps = repsAtFraction(fraction);
        const double steepness = repCurveSteepness(reps, fraction);
        const double shaped = std::max(reps, kLeastShapeReps);
        m_logReps = std::log(shaped / kShapeReps);
        const double factor = std::exp(point.factor + point.shape * m_logReps);
        m_repsBeyondFirst = (reps - 1.0) * factor;
        // How many reps more a one-unit rise of ln 1RM allows; never flatter than 0.3 of plain.
        m_repsPerLevel =
            factor / steepness * std::max(0.3, 1.0 + (reps - 1.0) * point.shape / shaped);
    }

    void update(std::size_t i, const StrengthPoint& point)
    {
        const StrengthObservation& set = m_input.sets[i];
        readCurve(set, point);
        const double tired = std::min(set.earlierSets, kMostEarlierSets);
        const double predicted = 1.0 + m_repsBeyondFirst - point.fatigue * tired;
        const Reading reading = readSet(set, predicted, m_parameters);
        const double slope = m_repsPerLevel;
        const double dayPart = point.day + set.side * point.sideDay;
        // Linearised at day effect zero: at its smoothed value the rep-curve factor runs away,
        // because a large factor lets small days explain all scatter.
        const double residual = reading.reps - predicted - slope * dayPart;
        const double variance = residual > 0.0 ? reading.lowVariance : reading.highVariance;
        const double tail = m_parameters.setTail;
        // A Student-t error: the farther off, the less it counts.
        // A tested maximum is watched by everyone: no slips there.
        const double noise = set.evidence == SetEvidence::Tested
                                 ? variance
                                 : variance * (tail + square(residual) / variance) / (tail + 1.0);

        SetRecord& record = m_sets[i];
        Vector& gradient = record.gradient;
        gradient = {};
        gradient[Level] = slope;
        gradient[Factor] = m_repsBeyondFirst;
        gradient[Shape] = m_repsBeyondFirst * m_logReps;
        gradient[Day] = slope;
        double innovation = residual - slope * (m_state[Level] - point.level) -
                            gradient[Factor] * (m_state[Factor] - point.factor) -
                            gradient[Shape] * (m_state[Shape] - point.shape) -
                            slope * (m_state[Day] - point.day);
        if constexpr (kSides) {
            gradient[Difference] = set.side * slope;
            gradient[SideDay] = set.side * slope;
            innovation -= gradient[Difference] * (m_state[Difference] - point.difference) +
                          gradient[SideDay] * (m_state[SideDay] - point.sideDay);
        }
        if constexpr (kFatigue) {
            gradient[at(kFatigueAt)] = -tired;
            innovation += tired * (m_state[at(kFatigueAt)] - point.fatigue);
        }
        absorb(record, innovation, noise);
    }

    // The scalar Kalman update.
    void absorb(SetRecord& record, double innovation, double noise)
    {
        Vector spreadAlong{};
        double variance = noise;
        for (int r = 0; r < kSize; ++r) {
            // The gradient is zero at Slope and Past.
            const Vector& row = m_covariance[at(r)];
            double sum = record.gradient[Level] * (row[Level] + row[Day]) +
                         record.gradient[Factor] * row[Factor] +
                         record.gradient[Shape] * row[Shape];
            if constexpr (kSides) {
                sum += record.gradient[Difference] * (row[Difference] + row[SideDay]);
            }
            if constexpr (kFatigue) {
                sum += record.gradient[at(kFatigueAt)] * row[at(kFatigueAt)];
            }
            spreadAlong[at(r)] = sum;
            variance += record.gradient[at(r)] * sum;
        }
        record.innovation = innovation;
        record.variance = variance;
        const double precision = 1.0 / variance;
        for (int r = 0; r < kSize; ++r) {
            record.gain[at(r)] = spreadAlong[at(r)] * precision;
            m_state[at(r)] += record.gain[at(r)] * innovation;
            for (int c = 0; c < kSize; ++c) {
                m_covariance[at(r)][at(c)] -= record.gain[at(r)] * spreadAlong[at(c)];
            }
        }
    }

    // Smoothed means, without an inverse: x = predicted - covariance * costate. Returns the
    // largest change of the points.
    double backward(bool isDamped)
    {
        Vector costate{};
        double change = 0.0;
        for (std::size_t j = m_nodes.size(); j-- > 0;) {
            const Node& node = m_timeline.nodes[j];
            NodeRecord& record = m_nodes[j];
            if (node.isPast) {
                costate[Level] += costate[Past];
                costate[Past] = 0.0;
            }
            for (int i = node.last; i-- > node.first;) {
                passSet(m_sets[static_cast<std::size_t>(i)], costate);
            }
            change = std::max(change, movePoint(record, costate, m_points[j], isDamped));
            if (node.hasSets()) {
                record.dayWeight = dayWeight(node, m_points[j]);
            }
            costate[Slope] = record.mix * costate[Level] + record.keep * costate[Slope];
            costate[Day] = 0.0;
            if constexpr (kSides) {
                costate[SideDay] = 0.0;
            }
        }
        return change;
    }

    static void passSet(const SetRecord& set, Vector& costate)
    {
        double pull = set.innovation / set.variance;
        for (int c = 0; c < kSize; ++c) {
            pull += set.gain[at(c)] * costate[at(c)];
        }
        for (int c = 0; c < kSize; ++c) {
            costate[at(c)] -= set.gradient[at(c)] * pull;
        }
    }

    // A Student-t day: the farther off, the less it is held to the usual spread.
    double dayWeight(const Node& node, const StrengthPoint& point) const
    {
        const double tail = m_parameters.dayTail;
        NormalPrior usual{0.0, square(m_parameters.daySpread)};
        if (!m_input.days.empty()) {
            usual = m_input.days[static_cast<std::size_t>(node.day)];
        }
        return (tail + 1.0) / (tail + square(point.day - usual.mean) / usual.variance);
    }

    double smoothed(const NodeRecord& record, const Vector& costate, int place) const
    {
        double value = record.predicted[at(place)];
        for (int c = 0; c < kSize; ++c) {
            value -= record.covariance[at(place)][at(c)] * costate[at(c)];
        }
        return value;
    }

    double
    movePoint(const NodeRecord& record, const Vector& costate, StrengthPoint& point, bool isDamped)
    {
        StrengthPoint next;
        next.level = smoothed(record, costate, Level);
        next.factor = std::clamp(smoothed(record, costate, Factor), -kMostFactor, kMostFactor);
        next.shape = std::clamp(smoothed(record, costate, Shape), -kMostShape, kMostShape);
        next.day = smoothed(record, costate, Day);
        next.fatigue = m_parameters.fatigue;
        if constexpr (kSides) {
            next.difference = smoothed(record, costate, Difference);
            next.sideDay = smoothed(record, costate, SideDay);
        }
        if constexpr (kFatigue) {
            next.fatigue = smoothed(record, costate, kFatigueAt);
        }
        if (isDamped) {
            next.level = 0.5 * (next.level + point.level);
            next.factor = 0.5 * (next.factor + point.factor);
            next.shape = 0.5 * (next.shape + point.shape);
            next.fatigue = 0.5 * (next.fatigue + point.fatigue);
            next.difference = 0.5 * (next.difference + point.difference);
            next.day = 0.5 * (next.day + point.day);
            next.sideDay = 0.5 * (next.sideDay + point.sideDay);
        }
        const double change = std::max({std::abs(next.level - point.level),
                                        std::abs(next.difference - point.difference),
                                        std::abs(next.factor - point.factor),
                                        0.2 * std::abs(next.shape - point.shape)});
        point = next;
        return change;
    }

    // Means and variances of the past given everything, by the adjoint covariance (modified
    // Bryson-Frazier). `shared`: the error that all days have in common.
    std::vector<SmoothedStrength> smoothedPath(double shared) const
    {
        std::vector<SmoothedStrength> path;
        Vector costate{};
        Matrix adjoint{};
        for (std::size_t j = m_nodes.size(); j-- > 0;) {
            const Node& node = m_timeline.nodes[j];
            if (node.isPast) {
                costate[Level] += costate[Past];
                for (int c = 0; c < kSize; ++c) {
                    adjoint[Level][at(c)] += adjoint[Past][at(c)];
                }
                for (int r = 0; r < kSize; ++r) {
                    adjoint[at(r)][Level] += adjoint[at(r)][Past];
                }
                clear(costate, adjoint, Past);
            }
            for (int i = node.last; i-- > node.first;) {
                passSet(m_sets[static_cast<std::size_t>(i)], costate, adjoint);
            }
            if (node.hasSets() || j + 1 == m_nodes.size()) {
                path.push_back(smoothedAt(node.weeks, m_nodes[j], costate, adjoint, shared));
            }
            passMove(m_nodes[j], costate, adjoint);
        }
        std::reverse(path.begin(), path.end());
        return path;
    }

    static void clear(Vector& costate, Matrix& adjoint, int place)
    {
        costate[at(place)] = 0.0;
        for (int c = 0; c < kSize; ++c) {
            adjoint[at(place)][at(c)] = 0.0;
            adjoint[at(c)][at(place)] = 0.0;
        }
    }

    static void passSet(const SetRecord& set, Vector& costate, Matrix& adjoint)
    {
        Vector along{}; // adjoint times gain
        double pull = set.innovation / set.variance;
        double inner = 1.0 / set.variance;
        for (int r = 0; r < kSize; ++r) {
            pull += set.gain[at(r)] * costate[at(r)];
            for (int c = 0; c < kSize; ++c) {
                along[at(r)] += adjoint[at(r)][at(c)] * set.gain[at(c)];
            }
            inner += along[at(r)] * set.gain[at(r)];
        }
        for (int r = 0; r < kSize; ++r) {
            costate[at(r)] -= set.gradient[at(r)] * pull;
            for (int c = 0; c < kSize; ++c) {
                adjoint[at(r)][at(c)] += inner * set.gradient[at(r)] * set.gradient[at(c)] -
                                         set.gradient[at(r)] * along[at(c)] -
                                         along[at(r)] * set.gradient[at(c)];
            }
        }
    }

    static void passMove(const NodeRecord& record, Vector& costate, Matrix& adjoint)
    {
        costate[Slope] = record.mix * costate[Level] + record.keep * costate[Slope];
        for (int c = 0; c < kSize; ++c) {
            adjoint[Slope][at(c)] =
                record.mix * adjoint[Level][at(c)] + record.keep * adjoint[Slope][at(c)];
        }
        for (int r = 0; r < kSize; ++r) {
            adjoint[at(r)][Slope] =
                record.mix * adjoint[at(r)][Level] + record.keep * adjoint[at(r)][Slope];
        }
        clear(costate, adjoint, Day);
        if constexpr (kSides) {
            clear(costate, adjoint, SideDay);
        }
    }

    static double covarianceAt(const Matrix& covariance, const Matrix& adjoint, int a, int b)
    {
        double value = covariance[at(a)][at(b)];
        for (int r = 0; r < kSize; ++r) {
            for (int c = 0; c < kSize; ++c) {
                value -=
                    covariance[at(a)][at(r)] * adjoint[at(r)][at(c)] * covariance[at(c)][at(b)];
            }
        }
        return value;
    }

    SmoothedStrength smoothedAt(double weeks,
                                const NodeRecord& record,
                                const Vector& costate,
                                const Matrix& adjoint,
                                double shared) const
    {
        SmoothedStrength past;
        const Matrix& covariance = record.covariance;
        past.weeks = weeks;
        past.level = smoothed(record, costate, Level);
        past.levelVariance =
            std::max(0.0, covarianceAt(covariance, adjoint, Level, Level)) + shared;
        if constexpr (kSides) {
            past.difference = smoothed(record, costate, Difference);
            past.differenceVariance =
                std::max(0.0, covarianceAt(covariance, adjoint, Difference, Difference)) +
                square(m_parameters.sideScaleError * past.difference);
            past.levelDifferenceCovariance = covarianceAt(covariance, adjoint, Level, Difference);
        }
        return past;
    }

    StrengthFit report(int iterations) const
    {
        StrengthFit fit;
        fit.iterations = iterations;
        fit.level = m_state[Level];
        fit.factor = m_state[Factor];
        fit.shape = m_state[Shape];
        fit.pastLevel = m_state[Past];
        fit.levelVariance = m_covariance[Level][Level];
        fit.factorVariance = m_covariance[Factor][Factor];
        fit.shapeVariance = m_covariance[Shape][Shape];
        fit.levelFactorCovariance = m_covariance[Level][Factor];
        fit.levelShapeCovariance = m_covariance[Level][Shape];
        fit.factorShapeCovariance = m_covariance[Factor][Shape];
        const double weeks = m_input.lookBack;
        fit.slope = (m_state[Level] - m_state[Past]) / weeks;
        fit.slopeVariance = (m_covariance[Level][Level] + m_covariance[Past][Past] -
                             2.0 * m_covariance[Level][Past]) /
                            square(weeks);
        if constexpr (kSides) {
            fit.difference = m_state[Difference];
            fit.differenceVariance = m_covariance[Difference][Difference];
            fit.levelDifferenceCovariance = m_covariance[Level][Difference];
        }
        for (std::size_t j = 0; j < m_nodes.size(); ++j) {
            if (m_timeline.nodes[j].hasSets()) {
                fit.dayEffects.push_back({m_points[j].day, dayVariance(j)});
            }
        }
        fit.points = m_points;
        addSharedError(fit);
        double sum = fit.level;
        for (const Vector& row : m_covariance) {
            sum = std::accumulate(row.begin(), row.end(), sum);
        }
        sum = std::accumulate(m_state.begin(), m_state.end(), sum);
        fit.isFinite = std::isfinite(sum);
        return fit;
    }

    // Of the day effect, given this day's sets and all before.
    double dayVariance(std::size_t j) const
    {
        const Node& node = m_timeline.nodes[j];
        double variance = m_nodes[j].covariance[Day][Day];
        for (int i = node.first; i < node.last; ++i) {
            const SetRecord& set = m_sets[static_cast<std::size_t>(i)];
            variance -= square(set.gain[Day]) * set.variance;
        }
        return std::max(variance, 1e-8);
    }

    // A person's way of naming the reserve errs alike in all sets: it never averages out. It
    // shifts the level now and in the past alike, so the slope keeps its own doubt.
    void addSharedError(StrengthFit& fit) const
    {
        double reserves = 0.0;
        int known = 0;
        for (const StrengthObservation& set : m_input.sets) {
            const bool isKnown = set.evidence == SetEvidence::Measured ||
                                 set.evidence == SetEvidence::Limit ||
                                 set.evidence == SetEvidence::Tested;
            if (isKnown) {
                reserves += set.reserve;
                ++known;
            }
        }
        const double mean = known == 0 ? 4.0 : std::min(8.0, reserves / known);
        constexpr double kLevelPerRep = 0.026; // one rep is about 2.6 % of 1RM at any count
        fit.levelVariance += square(
            kLevelPerRep * (m_parameters.sharedReps + m_parameters.sharedRepsPerReserve * mean));
        if constexpr (kSides) {
            fit.differenceVariance += square(m_parameters.sideScaleError * fit.difference);
        }
    }

    static constexpr std::size_t at(int place) { return static_cast<std::size_t>(place); }

    const StrengthInput& m_input;
    const StrengthParameters& m_parameters;
    Timeline m_timeline;
    std::vector<NodeRecord> m_nodes;
    std::vector<SetRecord> m_sets;
    std::vector<StrengthPoint> m_points;
    double m_firstLevel = 0.0;
    Vector m_state{};
    Matrix m_covariance{};
    double m_lastTrained = 0.0;
    bool m_hasTrained = false;
    double m_excess = 0.0;
    bool m_curveIsFresh = false;
    double m_curveLoad = 0.0;
    double m_curveSide = 0.0;
    double m_logReps = 0.0;
    double m_repsBeyondFirst = 0.0;
    double m_repsPerLevel = 0.0;
};

template <bool kSides, bool kFatigue>
StrengthFit
fitWith(const StrengthInput& input, const StrengthParameters& parameters, const FitOptions& options)
{
    StrengthFit fit = Filter<kSides, kFatigue>(input, parameters).fit(options);
    if (!fit.isFinite) {
        // Not seen in any test; a plain curve cannot run away.
        StrengthParameters plain = parameters;
        plain.shapeSpread = 0.0;
        StrengthInput simple = input;
        simple.factor.variance = 0.0;
        fit = Filter<kSides, kFatigue>(simple, plain)
                  .fit({1, 1e-3, false, options.wantsPath, kFatigue});
    }
    return fit;
}

} // namespace

StrengthFit fitStrength(const StrengthInput& input,
                        const StrengthParameters& parameters,
                        const FitOptions& options)
{
    if (input.hasSides) {
        return options.learnsFatigue ? fitWith<true, true>(input, parameters, options)
                                     : fitWith<true, false>(input, parameters, options);
    }
    return options.learnsFatigue ? fitWith<false, true>(input, parameters, options)
                                 : fitWith<false, false>(input, parameters, options);
}

LoadForReps loadForReps(const StrengthFit& fit, double reps, double side)
{
    const auto curve = [&fit](double plain) {
        const double shaped = std::max(plain, kLeastShapeReps);
        return 1.0 +
               (plain - 1.0) * std::exp(fit.factor + fit.shape * std::log(shaped / kShapeReps));
    };
    double low = 1.0;
    double high = 40.0;
    for (int step = 0; step < 60; ++step) {
        const double middle = 0.5 * (low + high);
        (curve(middle) < reps ? low : high) = middle;
    }
    const double plain = 0.5 * (low + high);
    const double shaped = std::max(plain, kLeastShapeReps);
    const double logReps = std::log(shaped / kShapeReps);
    const double fraction = repFraction(plain);
    const double factor = std::exp(fit.factor + fit.shape * logReps);
    const double rise = factor * (1.0 + (plain - 1.0) * fit.shape / shaped);
    const double byFactor = repCurveSteepness(plain, fraction) * (plain - 1.0) * factor / rise;
    const double byShape = byFactor * logReps;
    LoadForReps load;
    load.logLoad = fit.level + side * fit.difference + std::log(fraction);
    load.variance =
        fit.levelVariance + square(byFactor) * fit.factorVariance +
        square(byShape) * fit.shapeVariance + 2.0 * byFactor * fit.levelFactorCovariance +
        2.0 * byShape * fit.levelShapeCovariance +
        2.0 * byFactor * byShape * fit.factorShapeCovariance +
        square(side) * fit.differenceVariance + 2.0 * side * fit.levelDifferenceCovariance;
    return load;
}

} // namespace levelbar
