// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/clock.h"
#include "ui/floor/floor_model.h"
#include "ui/floor/floor_writer.h"

#include <QObject>

namespace levelbar::ui {

// What keys do to a cell: text is gathered in the model's draft, read by core when the cell is
// entered or left, and written. What cannot be read or stored stays in the cell with a sentence.
class FloorEntry : public QObject {
    Q_OBJECT

public:
    enum class Outcome {
        Stored,  // a set is in the logbook
        Kept,    // the plan changed, or there was nothing to do
        Refused, // the cell holds a sentence that says why
    };

    FloorEntry(FloorModel& model,
               FloorWriter& writer,
               const Clock& clock,
               QObject* parent = nullptr);

    void type(const CellKey& key, const QString& text);
    // Takes the last character off; false when nothing was being typed.
    bool erase(const CellKey& key);
    // Gives up what was typed; false when nothing was.
    bool abandon(const CellKey& key);

    Outcome enter(const CellKey& key);
    // As enter, but a cell in which nothing was typed stays as it is.
    Outcome leave(const CellKey& key);

    void beginLoad(const CellKey& key);
    void stepLoad(const CellKey& key, int direction);
    void takeBack();

Q_SIGNALS:
    // What was saved or taken back.
    void said(const QString& sentence);
    // Why something was not done, and where. The cell holds the same sentence.
    void refused(const QString& sentence);

private:
    Outcome refuse(const CellKey& key, const QString& sentence);
    Outcome accept(const CellKey& key, const FloorCell& cell);
    Outcome storeAmount(const CellKey& key, const FloorCell& cell, const QString& text);
    Outcome store(const CellKey& key, const FloorCell& cell, const KeyedSet& keyed);
    Outcome storeLoad(const CellKey& key, const FloorCell& cell, const QString& text);
    Outcome changeLoad(const CellKey& key, const FloorCell& cell, const Mass& load);

    [[nodiscard]] const Exercise* exerciseOf(const CellKey& key) const;
    [[nodiscard]] PlannedSet planOf(const CellKey& key, const FloorCell& cell) const;
    [[nodiscard]] Result<KeyedSet> keyedFrom(const CellKey& key, const QString& text) const;
    // The other side's open set, when both are to take the same load.
    [[nodiscard]] std::optional<PlannedSet> withSameLoad(const CellKey& key,
                                                         const FloorCell& cell) const;
    // Open sets of the person's exercise that have nothing to go by either.
    [[nodiscard]] std::vector<PlannedSet> alsoWithoutLoad(const PlannedSet& planned) const;

    FloorModel& m_model;
    FloorWriter& m_writer;
    const Clock& m_clock;
};

} // namespace levelbar::ui
