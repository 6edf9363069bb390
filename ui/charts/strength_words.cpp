// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/strength_words.h"

#include "ui/words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include <algorithm>

namespace levelbar::ui {

namespace {

QString translated(const char* text)
{
    return QCoreApplication::translate("StrengthChart", text);
}

QString setText(const PerformedSet& set, EffortScale effort)
{
    QString text = QStringLiteral("%1 %2 × %3")
                       .arg(plain(set.load.number()),
                            plain(unitWord(set.load.unit())),
                            QLocale().toString(set.reps.value_or(0)));
    if (set.reserve) {
        const bool isRpe = effort == EffortScale::Rpe && isOnScale(*set.reserve, effort);
        text += isRpe ? translated(" at RPE %1").arg(plain(effortNumber(*set.reserve, effort)))
                      : translated(", %1 in reserve").arg(plain(levelbar::text(*set.reserve)));
    }
    return text;
}

} // namespace

QString dotWords(const StrengthDot& dot, const StrengthView& view)
{
    const QString day = dayText(dot.day);
    const QString load = view.scale.text(dot.kilograms, dot.day);
    if (dot.isTest || !dot.set) {
        return translated("%1: tested, %2").arg(day, load);
    }
    QString text =
        (dot.isBound ? translated("%1: %2, %3: at least %4")
                     : translated("%1: %2, %3: speaks for %4"))
            .arg(day, setText(*dot.set, view.effort), word(howKnownWord(dot.known)), load);
    if (dot.set->pain.value_or(0) > 0) {
        text += translated("; pain %1 of 10").arg(*dot.set->pain);
    }
    return text;
}

QString forecastWords(const BandPoint& point, const StrengthView& view)
{
    return translated("%1, if it goes on so: about %2; nine times in ten between %3 and %4")
        .arg(dayText(point.day),
             view.scale.text(point.value, point.day),
             view.scale.number(point.low, point.day),
             view.scale.number(point.high, point.day));
}

QString chartWords(const StrengthView& view)
{
    const StrengthCourse& course = view.course;
    if (course.figure.dots.empty()) {
        return translated("Nothing to show for this exercise and side.");
    }
    const auto tests = std::count_if(course.figure.dots.begin(),
                                     course.figure.dots.end(),
                                     [](const StrengthDot& dot) { return dot.isTest; });
    QStringList parts = {
        translated("Dots: %1, from %2 to %3.")
            .arg(course.figure.dots.size())
            .arg(dayText(course.figure.dots.front().day), dayText(course.figure.dots.back().day))};
    if (tests > 0) {
        parts << translated("Tested values: %1.").arg(tests);
    }
    if (!course.pains.empty()) {
        parts << translated("Days with pain: %1, the last on %2.")
                     .arg(course.pains.size())
                     .arg(dayText(course.pains.back().day));
    }
    if (!course.layOffs.empty()) {
        parts << translated("Lay-offs: %1, the last from %2 to %3.")
                     .arg(course.layOffs.size())
                     .arg(dayText(course.layOffs.back().from), dayText(course.layOffs.back().to));
    }
    if (!course.forecast.empty()) {
        parts << forecastWords(course.forecast.back(), view) + QLatin1Char('.');
    }
    if (view.goal) {
        const double kilograms = view.goal->load.kilograms();
        parts << translated("Goal: %1.").arg(view.scale.text(kilograms, view.asOf));
    }
    if (view.other) {
        parts << translated("Beside it: %1.").arg(view.otherName);
    }
    return parts.join(QLatin1Char(' '));
}

} // namespace levelbar::ui
