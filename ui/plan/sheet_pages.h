// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"

#include <QString>

#include <optional>
#include <vector>

class QPagedPaintDevice;
class QPainter;

namespace levelbar::ui {

// What one person is to do in one exercise.
struct SheetCell {
    QString aim; // "52.5 kg × 8"; of body weight "× 8"; empty: not for this person
    int sets = 0;
};

struct SheetRow {
    int number = 1; // down the whole sheet: by it what is written comes back
    QString name;
    std::vector<SheetCell> cells; // by exercise
};

// People at one rack in the order of their turns.
struct SheetRack {
    QString title;
    std::vector<SheetRow> rows;
};

// A meeting on paper, to be written on with a pencil. It lies about where everybody can read it:
// no body mass, no marks of health, no sides.
struct MeetingSheet {
    qlonglong number = 0;
    QString className;
    Day day;
    std::optional<TimeOfDay> start;
    std::vector<QString> exercises;
    std::vector<SheetRack> racks;
};

// The painter must be active on the device.
void paintPages(const MeetingSheet& sheet, QPagedPaintDevice& device, QPainter& painter);

} // namespace levelbar::ui
