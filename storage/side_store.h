// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/review.h"
#include "core/sides/side_records.h"
#include "storage/action.h"

#include <map>

namespace levelbar::storage {

// What was laid down about left/right differences: known reasons, operations, prescriptions of a
// person; thresholds of the gym. Values must have passed their check of side_records.h.
class SideStore {
public:
    explicit SideStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    [[nodiscard]] SideRecords ofMember(MemberId member) const; // empty for an unknown person
    [[nodiscard]] std::map<MemberId, SideRecords> all() const; // those with a record
    // Those that differ from the usual one.
    [[nodiscard]] std::map<MeasureKey, double> thresholds() const;

    // All that a review takes beside the histories.
    [[nodiscard]] ReviewSettings reviewSettings() const;

    // Adds a reason, or replaces the one of the same measure and first day. Another one that still
    // holds ends on the new one's first day. To end a reason: put it with its last day.
    static void putReason(WriteScope& scope, MemberId member, const KnownReason& reason);

    // The usual threshold takes the row away.
    static void setThreshold(WriteScope& scope, const MeasureKey& measure, double percent);

    // Adds a prescription, or replaces the one of the same exercise and first day. To end it, or
    // to choose the extra set: put it changed. Constraint while another one of the exercise runs.
    static void
    putPrescription(WriteScope& scope, MemberId member, const SidePrescription& prescription);

    // Adds an operation; the same one again changes nothing.
    static void addSurgery(WriteScope& scope, MemberId member, const Surgery& surgery);
    static void removeSurgery(WriteScope& scope, MemberId member, const Surgery& surgery);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
