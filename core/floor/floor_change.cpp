// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/floor_change.h"

#include "core/base/number.h"

namespace levelbar {

std::string calledOut(const FloorPerson& person)
{
    return std::to_string(person.bib) + (person.name.empty() ? "" : " " + person.name);
}

std::string loadText(const Mass& load)
{
    return load.number() + " " + std::string(unitWord(load.unit()));
}

std::string setText(const PerformedSet& set)
{
    const bool hasLoad = set.load.thousandths() > 0;
    std::string said = hasLoad ? loadText(set.load) : "";
    if (set.reps == 0) {
        return said + (hasLoad ? ", tried" : "tried");
    }
    if (set.reps) {
        said += (hasLoad ? " × " : "") + std::to_string(*set.reps) + (hasLoad ? "" : " reps");
    } else if (set.secondsTenths) {
        said += (hasLoad ? ", " : "") + decimalText(*set.secondsTenths, 1) + " s";
    } else if (set.metresTenths) {
        said += (hasLoad ? ", " : "") + decimalText(*set.metresTenths, 1) + " m";
    }
    return said + (set.reserve ? ", " + text(*set.reserve) + " in reserve" : "");
}

} // namespace levelbar
