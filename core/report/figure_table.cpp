// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/figure_table.h"

#include <fmt/format.h>

namespace levelbar {

namespace {

std::string line(const StrengthDot& dot)
{
    std::string text =
        fmt::format("{},{},{:.3f},,", dot.isTest ? "test" : "set", isoText(dot.day), dot.kilograms);
    if (!dot.set) {
        return text + ",,,,,,\r\n";
    }
    const PerformedSet& set = *dot.set;
    return text + fmt::format(",{},{},{},{},{},{}\r\n",
                              howKnownWord(set.known),
                              dot.isBound ? "yes" : "no",
                              set.load.number(),
                              unitWord(set.load.unit()),
                              set.reps ? std::to_string(*set.reps) : "",
                              set.reserve ? levelbar::text(*set.reserve) : "");
}

} // namespace

std::string figureCsv(const StrengthFigure& figure)
{
    std::string text = "row,date,one_rm_kg,low_kg,high_kg,known,at_least,load,unit,reps,rir\r\n";
    for (const StrengthDot& dot : figure.dots) {
        text += line(dot);
    }
    for (const BandPoint& point : figure.band) {
        text += fmt::format("band,{},{:.3f},{:.3f},{:.3f},,,,,,\r\n",
                            isoText(point.day),
                            point.value,
                            point.low,
                            point.high);
    }
    return text;
}

} // namespace levelbar
