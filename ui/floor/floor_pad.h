// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/number_pad.h"
#include "storage/spot_store.h"
#include "ui/floor/floor_entry.h"
#include "ui/floor/floor_eyes.h"
#include "ui/floor/pad_hour.h"
#include "ui/workspace.h"

#include <QObject>

#include <map>
#include <optional>
#include <set>
#include <utility>
#include <vector>

namespace levelbar::ui {

// Drives core's number pad over what the logbook has: each key's effects are stored at once, and
// what is written elsewhere is taken over when the page reads again.
class FloorPad : public QObject {
    Q_OBJECT

public:
    FloorPad(FloorModel& model, FloorWriter& writer, FloorEntry& entry, Workspace& workspace);

    void setRacks(int racks) { m_racks = racks; }

    // The logbook was read: takes it over into the hour of that class and day, and writes the
    // hour into the sheet. Throws StoreError.
    void take(FloorSheet& sheet, const FloorReference& reference);
    // The kit or the library changed.
    void forgetBooks();

    void press(const PadKey& key);
    // The last thing done here, wherever it was keyed.
    void takeBack();
    // The grid's cursor was moved by hand.
    void pointAt(const CellKey& key);

    [[nodiscard]] const NumberPad& pad() const { return m_hour->pad; }

    [[nodiscard]] const FloorBook& book() const { return m_hour->book; }

    [[nodiscard]] const HookHoles& holes() const { return m_hour->holes; }

    [[nodiscard]] std::optional<CellKey> cursor() const;
    [[nodiscard]] int minute() const; // of the hour
    [[nodiscard]] QString questionText() const;

Q_SIGNALS:
    void typedChanged();
    // What only the pad knows changed: the page must read again.
    void hourChanged();
    void cursorMoved();
    void said(const QString& sentence);
    void refused(const QString& sentence);

private:
    // What taking back needs of a step beside core's.
    struct Mark {
        std::optional<ActionId> own;    // what it stored
        std::optional<ActionId> newest; // action once it was done
    };

    // A class on a day.
    struct Hour {
        NumberPad pad;
        ClassFloor read; // as the logbook had it last
        FloorPlaces places;
        std::map<MemberId, storage::FloorSpot> stored; // as the logbook has it
        std::vector<Mark> marks;                       // one a step of the pad
        FloorBook book;
        HookHoles holes;
        std::set<MemberId> bookFor;           // whose sets are in it; nobody's: to be read
        std::vector<FloorColumn> bookColumns; // what the class did when it was read
    };

    using HourKey = std::pair<ClassId, Day>;

    [[nodiscard]] std::optional<QString> reasonAgainst(const FloorBatch& batch) const;
    [[nodiscard]] FloorBatch batchOf(const ClassFloor& before, const ClassFloor& after) const;
    [[nodiscard]] NewSet newSet(const PadCell& cell) const;
    [[nodiscard]] std::optional<PlannedSet> replanned(const ClassFloor& before,
                                                      const PadCell& cell) const;
    void addPains(const FloorPerson& who, std::size_t known, FloorBatch& batch) const;
    void addPeople(const ClassFloor& before, const ClassFloor& after, FloorBatch& batch) const;
    [[nodiscard]] std::optional<NewcomerPlan> newcomerPlan(const ClassFloor& after,
                                                           const FloorPerson& who) const;
    // What is stored of the hour's places; and what is not yet as it is on the floor.
    [[nodiscard]] std::map<MemberId, storage::FloorSpot> storedSpots(const FloorSheet& sheet) const;
    [[nodiscard]] std::vector<storage::FloorSpot> changedSpots() const;
    [[nodiscard]] RackSettings settingsFor(const FloorSheet& sheet) const;
    void dropReversedSteps();
    // False when it failed; then nothing changed.
    bool store(const NumberPad& after, const FloorBatch& batch);
    void takeBackStep();
    [[nodiscard]] std::optional<ActionId> newestAction() const;
    void readBookFor(const FloorSheet& sheet, const FloorReference& reference);
    void obey(PadOutcome outcome);

    FloorModel& m_model;
    FloorWriter& m_writer;
    FloorEntry& m_entry;
    Workspace& m_workspace;
    FloorEyes m_eyes;
    int m_racks = 1;
    std::map<HourKey, Hour> m_hours;
    Hour m_none;            // before any class is chosen
    Hour* m_hour = &m_none; // the class and day on the page
};

} // namespace levelbar::ui
