// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/exercises/exercise_text.h"

#include "ui/words.h"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>
#include <cmath>

namespace levelbar::ui {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("ExercisePage", text);
}

QString escaped(std::string_view text)
{
    return plain(text).toHtmlEscaped();
}

QString heading(const QString& text)
{
    return QStringLiteral("<p style='margin-top:12px; margin-bottom:2px'><b>%1</b></p>").arg(text);
}

QString paragraph(const QString& text)
{
    return QStringLiteral("<p style='margin-top:2px; margin-bottom:2px'>%1</p>").arg(text);
}

// One line a part, each with its mark.
QString lines(const std::vector<std::string>& parts, QChar mark)
{
    QString html;
    for (const std::string& part : parts) {
        html += paragraph(QStringLiteral("%1&nbsp;&nbsp;%2").arg(mark).arg(escaped(part)));
    }
    return html;
}

const Exercise* byKey(const Library& library, const std::string& key)
{
    const auto found = std::find_if(library.exercises.begin(),
                                    library.exercises.end(),
                                    [&key](const auto& e) { return e.key == key; });
    return found == library.exercises.end() ? nullptr : &*found;
}

QString comparedText(const Exercise& exercise, const Library& library)
{
    const Exercise* base = byKey(library, exercise.baseExerciseKey);
    if (base == nullptr || !exercise.ratioToBase) {
        return {};
    }
    const QString percent = QLocale().toString(std::lround(100.0 * *exercise.ratioToBase));
    if (!exercise.ratioSpreadPercent) {
        return tr("About %1 % of %2.").arg(percent, escaped(base->name));
    }
    // Two in three people lie within the standard deviation.
    return tr("About %1 % of %2; two in three people within %3 % of that.")
        .arg(percent,
             escaped(base->name),
             QLocale().toString(std::lround(*exercise.ratioSpreadPercent)));
}

QString ladderHtml(const Ladder& ladder, const Exercise& exercise, const Library& library)
{
    QString html =
        heading(ladder.isShipped ? tr("Ladder: %1").arg(escaped(ladder.name))
                                 : tr("Ladder: %1 (this gym's own)").arg(escaped(ladder.name)));
    int place = 0;
    for (const Rung& rung : ladder.rungs) {
        ++place;
        const QString name = rungName(rung, library).toHtmlEscaped();
        const bool isThis = rung.exerciseKey == exercise.key;
        html += paragraph(QStringLiteral("%1&nbsp;&nbsp;%2")
                              .arg(place)
                              .arg(isThis ? QStringLiteral("<b>%1</b>").arg(name) : name));
        if (isThis) {
            html += QStringLiteral("<p style='margin:0 0 4px 26px'>%1<br>%2</p>")
                        .arg(gateUpText(rung, exercise.amount).toHtmlEscaped(),
                             gateDownText(rung).toHtmlEscaped());
        }
    }
    return html;
}

} // namespace

QString rungName(const Rung& rung, const Library& library)
{
    const Exercise* exercise = byKey(library, rung.exerciseKey);
    const QString name = exercise == nullptr ? plain(rung.exerciseKey) : plain(exercise->name);
    return rung.setting.empty() ? name : tr("%1, %2").arg(name, plain(rung.setting));
}

QString gateUpText(const Rung& rung, AmountKind amount)
{
    const QLocale locale;
    const QString unit = amount == AmountKind::Reps      ? tr("clean reps")
                         : amount == AmountKind::Seconds ? tr("clean seconds")
                                                         : tr("clean metres");
    QString text = tr("Up: %1 %2 in %3 sets, %4 sessions in a row")
                       .arg(locale.toString(rung.up.amount),
                            unit,
                            locale.toString(rung.up.sets),
                            locale.toString(rung.up.sessions));
    if (rung.up.loadPercent > 0) {
        text = tr("%1, with %2 % of body mass").arg(text, locale.toString(rung.up.loadPercent));
    }
    return text;
}

QString gateDownText(const Rung& rung)
{
    const QLocale locale;
    return tr("Down: pain %1 of 10, more than %2 days away, or fewer than %3 in %4 sessions")
        .arg(locale.toString(rung.down.pain),
             locale.toString(rung.down.daysAway),
             locale.toString(rung.down.fewerThan),
             locale.toString(rung.down.sessions));
}

QString exerciseHtml(const Exercise& exercise,
                     const ExerciseDetail& detail,
                     const Library& library,
                     const std::vector<Ladder>& ladders)
{
    QString html = paragraph(QStringLiteral("%1 · %2 · %3 · %4")
                                 .arg(word(patternWord(exercise.pattern)),
                                      word(implementWord(exercise.implement)),
                                      tr("sides: %1").arg(word(sidednessWord(exercise.sidedness))),
                                      word(amountWord(exercise.amount))));
    if (exercise.isHidden) {
        html += paragraph(tr("Hidden: it is not offered any more; what was logged stays."));
    }
    if (!detail.cues.empty()) {
        html += heading(tr("Cues")) + lines(detail.cues, QChar(0x2610));
    }
    if (!detail.cautions.empty()) {
        html += heading(tr("Cautions")) + lines(detail.cautions, QChar(0x26A0));
    }
    if (!detail.areas.empty()) {
        QStringList areas;
        for (const std::string& area : detail.areas) {
            areas << word(area);
        }
        html += heading(tr("Areas it stresses")) +
                paragraph(areas.join(QStringLiteral(", ")).toHtmlEscaped());
    }
    if (detail.benchAngle) {
        html += heading(tr("Bench")) +
                paragraph(tr("%1 degrees").arg(QLocale().toString(*detail.benchAngle)));
    }
    if (const QString compared = comparedText(exercise, library); !compared.isEmpty()) {
        html += heading(tr("Compared with")) + paragraph(compared);
    }
    for (const Ladder& ladder : ladders) {
        const bool isOnIt =
            std::any_of(ladder.rungs.begin(), ladder.rungs.end(), [&exercise](const Rung& rung) {
                return rung.exerciseKey == exercise.key;
            });
        if (isOnIt) {
            html += ladderHtml(ladder, exercise, library);
        }
    }
    const QString origin =
        exercise.isShipped ? tr("Shipped with the program.") : tr("This gym's own.");
    html += heading(tr("Source")) +
            paragraph(exercise.source.empty()
                          ? origin
                          : QStringLiteral("%1 %2").arg(escaped(exercise.source) + QLatin1Char('.'),
                                                        origin));
    return html;
}

} // namespace levelbar::ui
