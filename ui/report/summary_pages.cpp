// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/suppression.h"
#include "ui/report/page_flow.h"
#include "ui/report/report_pages.h"
#include "ui/words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QPainter>
#include <QStringList>

#include <algorithm>
#include <array>
#include <cmath>

namespace levelbar::ui {

namespace {

constexpr std::size_t kColumns = 8;
constexpr std::array<double, kColumns> kShares = {
    0.23, 0.08, 0.08, 0.09, 0.09, 0.10, 0.07, 0.26}; // of the page's width
constexpr TextLook kCell{9.0};
constexpr TextLook kHeadCell{8.5, true};
constexpr TextLook kNote{8.5, false, true};
constexpr double kRowGap = 1.2; // mm

using Cells = std::array<QString, kColumns>;

QString summaryText(const char* text)
{
    return QCoreApplication::translate("SummaryPages", text);
}

QString number(int value)
{
    return QLocale().toString(value);
}

QString percent(double share)
{
    return QLocale().toString(static_cast<int>(std::lround(100.0 * share)));
}

QString groupName(const std::string& group)
{
    return group.empty() ? summaryText("(no group)") : plain(group);
}

QString shareOfSets(const GroupRow& row)
{
    return row.sets == 0
               ? summaryText("–")
               : summaryText("%1 %").arg(percent(static_cast<double>(row.counted) / row.sets));
}

QString risingCell(const GroupRow& row)
{
    const auto share = risingShare(row);
    return share ? summaryText("%1 of %2: %3 % (%4–%5)")
                       .arg(number(row.rising),
                            number(row.judged),
                            percent(share->value),
                            percent(share->low),
                            percent(share->high))
                 : summaryText("too few");
}

Cells cellsOf(const QString& name, const GroupRow& row)
{
    if (row.isWithheld) {
        return {name, {}, {}, {}, {}, {}, {}, summaryText("withheld")};
    }
    return {name,
            number(row.people),
            number(row.visits),
            number(row.noShows),
            number(row.sets),
            shareOfSets(row),
            number(row.tests),
            risingCell(row)};
}

void paintRow(PageFlow& flow, const Cells& cells, const TextLook& look)
{
    const double inset = flow.mm(1.5);
    double height = 0.0;
    for (std::size_t i = 0; i < kColumns; ++i) {
        height = std::max(height,
                          flow.heightOf(cells.at(i), look, kShares.at(i) * flow.width() - inset));
    }
    flow.makeRoom(height + 2.0 * flow.mm(kRowGap));
    const double y = flow.y() + flow.mm(kRowGap);
    double x = 0.0;
    for (std::size_t i = 0; i < kColumns; ++i) {
        const double width = kShares.at(i) * flow.width() - inset;
        flow.draw(QRectF(x, y, width, height),
                  cells.at(i),
                  look,
                  i == 0 ? Qt::AlignLeft : Qt::AlignRight);
        x += kShares.at(i) * flow.width();
    }
    flow.advance(height + 2.0 * flow.mm(kRowGap));
    if (!flow.isTrial()) {
        flow.painter().setPen(QPen(QColor(0, 0, 0, 60), 0.4 * flow.point()));
        flow.painter().drawLine(QPointF(0.0, flow.y()), QPointF(flow.width(), flow.y()));
    }
}

void paintMeetings(PageFlow& flow, const GroupSummary& summary)
{
    const MeetingTally& tally = summary.meetings;
    flow.heading(summaryText("Meetings"), 8.0);
    if (tally.held + tally.cancelled + tally.unknown == 0) {
        flow.text(summaryText("No meeting is on record in this period."));
        return;
    }
    flow.text(
        summaryText("Held: %1. Cancelled: %2.").arg(number(tally.held), number(tally.cancelled)));
    if (tally.unknown > 0) {
        flow.text(summaryText("Planned, with nobody noted: %1. Not known whether they took place.")
                      .arg(number(tally.unknown)));
    }
    if (tally.places > 0) {
        flow.text(
            summaryText(
                "Fill: %1 came to %2 places, %3 %, in the %4 meetings whose places are known.")
                .arg(number(tally.came),
                     number(tally.places),
                     percent(static_cast<double>(tally.came) / tally.places),
                     number(tally.withPlaces)));
    } else {
        flow.text(summaryText("Fill: not known, no class has its places noted."));
    }
    if (summary.only) {
        flow.text(
            summaryText("Counted are meetings to which somebody of the group came or was booked; "
                        "fill counts everybody in them."),
            kNote);
    }
}

void paintNotes(PageFlow& flow)
{
    flow.advance(flow.mm(3));
    const QStringList notes = {
        summaryText(
            "People: who had a set, a test or a booking in the period. Counted: share of the sets "
            "that somebody counted. Getting stronger: of those with enough days to judge, whose "
            "main lift likely rises by more than 0.25 % a week at the period's end; in "
            "brackets the interval that holds the true share nine times in ten (Wilson 1927)."),
        summaryText(
            "Groups under %1 people are withheld, and others with them where the totals would give "
            "them away. No names, and nobody's own numbers, stand on this page.")
            .arg(number(kLeastGroup)),
        summaryText(
            "The share says how a group's training goes. It says nothing about health, and is no "
            "ground for a decision about a person.")};
    for (const QString& note : notes) {
        flow.text(note, kNote);
        flow.advance(flow.mm(1));
    }
}

} // namespace

void paintPages(const GroupSummary& summary, QPagedPaintDevice& device, QPainter& painter)
{
    PageFlow flow(device, painter);
    flow.setFoot(summaryText("Sums of a logbook kept for training; not a medical record."));
    flow.text(summaryText("Summary for the manager"), {17.0, true});
    flow.text(summary.only ? groupName(*summary.only) : summaryText("Everyone"), {12.0});
    flow.text(summaryText("%1 to %2").arg(longDate(summary.from), longDate(summary.to)),
              {9.5, false, true});
    flow.rule();
    if (summary.only && summary.all.isWithheld) {
        flow.text(summaryText(
            "This group is withheld: it has too few people, or its numbers would give a "
            "smaller group away."));
        flow.end();
        return;
    }
    paintMeetings(flow, summary);
    flow.heading(summaryText("People and training"), 20.0);
    paintRow(flow,
             {summaryText("Group"),
              summaryText("People"),
              summaryText("Visits"),
              summaryText("Missed"),
              summaryText("Sets"),
              summaryText("Counted"),
              summaryText("Tests"),
              summaryText("Getting stronger")},
             kHeadCell);
    paintRow(
        flow,
        cellsOf(summary.only ? groupName(*summary.only) : summaryText("Everyone"), summary.all),
        {9.0, true});
    for (const GroupRow& row : summary.groups) {
        paintRow(flow, cellsOf(groupName(row.group), row), kCell);
    }
    paintNotes(flow);
    flow.end();
}

} // namespace levelbar::ui
