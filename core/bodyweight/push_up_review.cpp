// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bodyweight/push_up_review.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace levelbar {

namespace {

constexpr int kDaysOfWeek = 7;

Presser presserOf(const Member& member, const Mass& bodyMass)
{
    return {member.sex, Length{member.statureTenthMillimetres.value_or(0)}, bodyMass};
}

// The push-up that a set was, when its load can be told.
std::optional<PushUp> pushUpOf(const DoneSet& set, const Library& library, const RackHoles& rack)
{
    const Exercise* exercise = library.exercise(set.exercise);
    const auto kind = exercise == nullptr ? std::nullopt : pushUpKindOf(exercise->key);
    if (!kind) {
        return std::nullopt;
    }
    PushUp pushUp{*kind, {}, set.performed.load};
    if (*kind == PushUpKind::HandsRaised) {
        if (!set.hookHole || *set.hookHole > rack.count) {
            return std::nullopt;
        }
        pushUp.height = rack.height(*set.hookHole);
    }
    return pushUp;
}

// Counted, and ended by effort or with a reserve that was named.
std::optional<Reserve> reserveOf(const PerformedSet& set)
{
    const bool isCounted = set.known == HowKnown::Counted && set.reps && *set.reps > 0;
    if (!isCounted || set.isAtLeast || set.kind == SetKind::Ramp) {
        return std::nullopt;
    }
    const bool isToTheEnd = set.stopped == StopReason::NoMore;
    return set.reserve ? set.reserve : isToTheEnd ? std::optional(Reserve{}) : std::nullopt;
}

// Of two sets the one that tells more: the later day, then the most that was in it.
bool tellsMore(const TellingSet& a, const TellingSet& b)
{
    return a.day != b.day ? a.day > b.day : a.reps + a.reserve.reps() > b.reps + b.reserve.reps();
}

std::vector<TellingSet> tellingSets(const PushUpRecords& records, const PushUpQuestion& question)
{
    std::vector<TellingSet> telling;
    for (const DoneSet& set : records.sets) {
        const PerformedSet& performed = set.performed;
        const bool isInTime = performed.day <= question.on &&
                              question.on - performed.day <= kPushUpWeeks * kDaysOfWeek;
        const auto reserve = reserveOf(performed);
        if (!isInTime || !reserve) {
            continue;
        }
        if (const auto pushUp = pushUpOf(set, records.library, question.rack)) {
            const bool hasHole = pushUp->kind == PushUpKind::HandsRaised;
            telling.push_back({performed.day,
                               *pushUp,
                               hasHole ? set.hookHole : std::nullopt,
                               *performed.reps,
                               *reserve});
        }
    }
    std::stable_sort(telling.begin(), telling.end(), tellsMore);
    return telling;
}

// Takes the readings in; a mass of that day, or the nearest there is.
void calibrate(PushUpReview& review, const PushUpRecords& records, Day on)
{
    for (const DatedReading& dated : records.readings) {
        if (dated.day > on) {
            continue;
        }
        const auto mass = bodyMassOn(records.history, records.library, dated.day);
        const Presser then = presserOf(records.history.member, mass ? mass->mass : review.bodyMass);
        const auto lever = calibrated(review.lever, then, dated.reading);
        if (lever) {
            review.lever = *lever;
        } else {
            ++review.refusedReadings;
        }
    }
}

std::optional<PushUpCapacity>
capacityOf(PushUpReview& review, const PushUpRecords& records, const PushUpQuestion& question)
{
    for (const TellingSet& set : tellingSets(records, question)) {
        const auto mass = bodyMassOn(records.history, records.library, set.day);
        const Presser then = presserOf(records.history.member, mass ? mass->mass : review.bodyMass);
        const auto capacity = capacityFromPushUps(then, {set.pushUp, set.reps, set.reserve});
        if (capacity) {
            review.telling = set;
            return *capacity;
        }
    }
    if (records.benchMaximum) {
        const auto capacity = capacityFromBench(records.history.member.sex, *records.benchMaximum);
        if (capacity) {
            review.isFromBench = true;
            return *capacity;
        }
    }
    return std::nullopt;
}

void addOthers(PushUpReview& review,
               const Presser& presser,
               const std::optional<PushUpCapacity>& capacity)
{
    for (const PushUpKind kind : {PushUpKind::Floor, PushUpKind::Knees, PushUpKind::Wall}) {
        PushUpRung rung;
        rung.pushUp.kind = kind;
        const auto load = pushUpLoad(presser, review.lever, rung.pushUp);
        if (!load) {
            continue; // a stature or a mass outside the formula
        }
        rung.load = load->load;
        if (capacity) {
            const auto reps = expectedPushUps(presser, review.lever, *capacity, rung.pushUp);
            rung.reps = reps ? std::optional(*reps) : std::nullopt;
        }
        review.others.push_back(rung);
    }
}

} // namespace

std::optional<DatedMass> bodyMassOn(const MemberHistory& history, const Library& library, Day on)
{
    std::optional<DatedMass> found;
    for (const TrialSeries& series : history.trials) {
        const TestKind* test = library.test(series.test);
        if (test == nullptr || test->key != "body-mass") {
            continue;
        }
        for (const Trial& trial : series.trials) {
            if (trial.isValid && trial.day <= on && (!found || trial.day >= *found->day)) {
                found = {
                    Mass::ofThousandths(std::llround(trial.value() * 1000.0), MassUnit::Kilogram),
                    trial.day};
            }
        }
    }
    if (!found && history.member.intakeMass) {
        return DatedMass{*history.member.intakeMass, std::nullopt};
    }
    return found;
}

std::optional<PushUpKind> pushUpKindOf(std::string_view exerciseKey)
{
    // Not feet-raised: no set says how high the feet were.
    constexpr std::array<std::pair<std::string_view, PushUpKind>, 6> kKinds = {{
        {"push-up", PushUpKind::Floor},
        {"weighted-push-up", PushUpKind::Floor},
        {"hand-release-push-up", PushUpKind::HandRelease},
        {"incline-push-up", PushUpKind::HandsRaised},
        {"knee-push-up", PushUpKind::Knees},
        {"wall-push-up", PushUpKind::Wall},
    }};
    for (const auto& [key, kind] : kKinds) {
        if (key == exerciseKey) {
            return kind;
        }
    }
    return std::nullopt;
}

PushUpReview reviewPushUps(const PushUpRecords& records, const PushUpQuestion& question)
{
    PushUpReview review;
    const Member& member = records.history.member;
    const auto mass = bodyMassOn(records.history, records.library, question.on);
    review.lacksStature = !member.statureTenthMillimetres;
    review.lacksMass = !mass;
    if (review.lacksStature || review.lacksMass) {
        return review;
    }
    review.bodyMass = mass->mass;
    review.bodyMassDay = mass->day;
    calibrate(review, records, question.on);
    const Presser presser = presserOf(member, review.bodyMass);
    const auto capacity = capacityOf(review, records, question);
    if (capacity) {
        const auto choice =
            chooseHole(question.rack, presser, review.lever, *capacity, question.wanted);
        if (choice) {
            review.proposed = PushUpRung{{PushUpKind::HandsRaised, choice->height, {}},
                                         choice->hole,
                                         choice->load,
                                         choice->reps,
                                         choice->fit};
        }
    }
    addOthers(review, presser, capacity);
    return review;
}

} // namespace levelbar
