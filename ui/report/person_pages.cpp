// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/report/page_flow.h"
#include "ui/report/report_pages.h"
#include "ui/report/strength_plot.h"
#include "ui/words.h"

#include <QCoreApplication>
#include <QDate>
#include <QGuiApplication>
#include <QLocale>
#include <QStringList>

#include <algorithm>
#include <vector>

namespace levelbar::ui {

namespace {

constexpr TextLook kSmall{8.5, false, true};
constexpr TextLook kSmallBold{9.5, true};
constexpr TextLook kCaution{8.5, true};
constexpr double kChartShare = 0.58;  // of the page's width
constexpr double kChartHeight = 35.0; // mm
constexpr double kLowChartHeight = 26.0;
constexpr double kGap = 4.0;

QString personText(const char* text)
{
    return QCoreApplication::translate("PersonPages", text);
}

QString liftName(const std::string& exercise, Side side)
{
    return side == Side::Both ? plain(exercise)
                              : personText("%1, %2").arg(plain(exercise), word(sideWord(side)));
}

void paintHead(PageFlow& flow, const PersonReport& report)
{
    const Member& member = report.member;
    flow.text(plain(member.name.empty() ? member.code : member.name), {19.0, true});
    QStringList facts = {personText("Id %1").arg(plain(member.code))};
    if (!member.group.empty()) {
        facts << plain(member.group);
    }
    if (member.goal) {
        facts << personText("goal: %1").arg(word(goalWord(*member.goal)));
    }
    flow.text(facts.join(QStringLiteral("  ·  ")), {9.5, false, true});
    flow.text(personText("As it stood on %1. %2").arg(longDate(report.asOf), words(report.seen)),
              {9.5, false, true});
    flow.rule();
}

// The chart on the left, what it means on the right; as high as the higher of the two.
void paintLift(PageFlow& flow, const PersonReport& report, const ReportLift& lift, double chart)
{
    const double left = kChartShare * flow.width();
    const double right = flow.width() - left - flow.mm(kGap);
    const QString name = liftName(lift.exercise, lift.side);
    const QString strength = words(lift.strength);
    const QString trend = words(lift.trend);
    const double gap = flow.mm(1);
    const double nameHeight = flow.heightOf(name, kSmallBold, right);
    const double strengthHeight = flow.heightOf(strength, {9.0}, right);
    const double trendHeight = flow.heightOf(trend, {9.0}, right);
    const double height =
        std::max(flow.mm(chart), nameHeight + strengthHeight + trendHeight + 2.0 * gap);
    flow.makeRoom(height);
    double y = flow.y();
    if (!flow.isTrial()) {
        paintStrengthPlot(flow.painter(),
                          QRectF(0.0, y, left, flow.mm(chart)),
                          lift.figure,
                          report.asOf,
                          {QGuiApplication::font(), flow.point(), 7.0});
    }
    const double x = left + flow.mm(kGap);
    flow.draw(QRectF(x, y, right, nameHeight), name, kSmallBold);
    y += nameHeight + gap;
    flow.draw(QRectF(x, y, right, strengthHeight), strength, {9.0});
    y += strengthHeight + gap;
    flow.draw(QRectF(x, y, right, trendHeight), trend, {9.0});
    flow.advance(height + flow.mm(1.5));
}

void paintStrength(PageFlow& flow, const PersonReport& report, double chart)
{
    flow.heading(personText("Strength over time"), report.lifts.empty() ? 6.0 : chart);
    if (report.lifts.empty()) {
        flow.text(personText("No strength can be read off the sets yet."));
        return;
    }
    std::vector<const StrengthFigure*> figures;
    for (const ReportLift& lift : report.lifts) {
        paintLift(flow, report, lift, chart);
        figures.push_back(&lift.figure);
    }
    const double height = flow.mm(4);
    flow.makeRoom(height);
    if (!flow.isTrial()) {
        paintPlotLegend(flow.painter(),
                        QRectF(0.0, flow.y(), flow.width(), height),
                        figures,
                        {QGuiApplication::font(), flow.point(), 7.5});
    }
    flow.advance(height);
}

void paintTargets(PageFlow& flow, const PersonReport& report)
{
    if (report.targets.empty()) {
        return;
    }
    flow.heading(personText("Next time"));
    for (const ReportTarget& target : report.targets) {
        QString line = words(target.headline);
        if (!target.plates.empty()) {
            line += QStringLiteral(" ") + personText("On the bar: %1.").arg(plain(target.plates));
        }
        const QString name = liftName(target.exercise, target.side);
        flow.makeRoom(flow.heightOf(name, kSmallBold, flow.width()) +
                      flow.heightOf(line, {}, flow.width()) +
                      flow.heightOf(words(target.reasons), kSmall, flow.width()));
        flow.text(name, kSmallBold);
        flow.text(line);
        flow.text(words(target.reasons), kSmall);
        flow.advance(flow.mm(1.2));
    }
    flow.text(words(report.targetNote), kSmall);
    flow.text(words(report.targetCaution), kCaution);
}

void paintSides(PageFlow& flow, const PersonReport& report)
{
    flow.heading(personText("Left and right"), 8.0);
    if (report.sides.empty()) {
        flow.text(personText("Not measured on both sides on one day in the last four months."));
        return;
    }
    for (const ReportSide& side : report.sides) {
        flow.text(personText("%1: %2").arg(plain(side.measure), words(side.words)));
    }
    if (report.moreSides > 0) {
        flow.text(QCoreApplication::translate(
                      "PersonPages", "%n more measured.", nullptr, report.moreSides),
                  kSmall);
    }
    flow.advance(flow.mm(0.8));
    flow.text(words(report.sideCaution), kCaution);
}

void paintTests(PageFlow& flow, const PersonReport& report)
{
    flow.heading(personText("Tests"), 8.0);
    if (report.tests.empty()) {
        flow.text(personText("Nothing tested yet."));
        return;
    }
    bool isSame = true; // one norm said once, where it is the same for all
    for (const ReportTest& test : report.tests) {
        isSame = isSame && words(test.norm) == words(report.tests.front().norm);
    }
    for (const ReportTest& test : report.tests) {
        flow.text(personText("%1: %2").arg(plain(test.test), words(test.words)));
        if (!isSame) {
            flow.text(words(test.norm), kSmall, 4.0);
        }
    }
    if (isSame) {
        flow.text(words(report.tests.front().norm), kSmall);
    }
    flow.advance(flow.mm(0.8));
    flow.text(words(report.testCaution), kCaution);
}

int paintAll(PageFlow& flow, const PersonReport& report, double chart)
{
    flow.setFoot(words(reportFoot()));
    paintHead(flow, report);
    paintStrength(flow, report, chart);
    paintTargets(flow, report);
    paintSides(flow, report);
    paintTests(flow, report);
    flow.end();
    return flow.pages();
}

} // namespace

QString longDate(Day day)
{
    const CivilDate date = civilDate(day);
    return QLocale().toString(QDate(date.year, date.month, date.day), QLocale::LongFormat);
}

void paintPages(const PersonReport& report, QPagedPaintDevice& device, QPainter& painter)
{
    // Lower charts where that saves a page.
    PageFlow high(device, painter, true);
    PageFlow low(device, painter, true);
    const bool isShorter =
        paintAll(low, report, kLowChartHeight) < paintAll(high, report, kChartHeight);
    PageFlow flow(device, painter);
    paintAll(flow, report, isShorter ? kLowChartHeight : kChartHeight);
}

} // namespace levelbar::ui
