// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/person_report.h"
#include "ui/report/page_flow.h"
#include "ui/report/report_pages.h"
#include "ui/words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QPainter>

namespace levelbar::ui {

namespace {

constexpr TextLook kName{12.0, true};
constexpr TextLook kAmount{11.0};
constexpr TextLook kCues{9.0, false, true};
constexpr double kIndent = 8.0; // mm, beside the number

QString takeAwayText(const char* text)
{
    return QCoreApplication::translate("TakeAwayPages", text);
}

QString cuesOf(const TakeAwayItem& item)
{
    QString all;
    for (const std::string& cue : item.cues) {
        all += (all.isEmpty() ? QString() : QStringLiteral("  ·  ")) + plain(cue);
    }
    return all;
}

void paintItem(PageFlow& flow, const TakeAwayItem& item, int number)
{
    const double width = flow.width() - flow.mm(kIndent);
    const QString name = item.how.empty()
                             ? plain(item.name)
                             : takeAwayText("%1, %2").arg(plain(item.name), word(item.how));
    const QString cues = cuesOf(item);
    flow.makeRoom(flow.heightOf(name, kName, width) +
                  flow.heightOf(words(item.amount), kAmount, width) +
                  flow.heightOf(words(item.aim), {}, width) + flow.heightOf(cues, kCues, width));
    flow.draw(QRectF(0.0, flow.y(), flow.mm(kIndent), flow.mm(8)),
              QLocale().toString(number),
              {15.0, true});
    flow.text(name, kName, kIndent);
    flow.text(words(item.amount), kAmount, kIndent);
    flow.text(words(item.aim), {}, kIndent);
    flow.text(cues, kCues, kIndent);
    flow.advance(flow.mm(3));
}

void paintStop(PageFlow& flow, const TakeAway& page)
{
    const TextLook look{10.0, true};
    const double inset = flow.mm(2.5);
    const double width = flow.width() - 2.0 * inset;
    const QString stop = words(page.stop);
    const double height = flow.heightOf(stop, look, width);
    flow.makeRoom(height + 2.0 * inset);
    if (!flow.isTrial()) {
        QPainter& painter = flow.painter();
        painter.setPen(QPen(Qt::black, 1.2 * flow.point()));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(0.0, flow.y(), flow.width(), height + 2.0 * inset));
    }
    flow.draw(QRectF(inset, flow.y() + inset, width, height), stop, look);
    flow.advance(height + 2.0 * inset);
}

} // namespace

void paintPages(const TakeAway& page, QPagedPaintDevice& device, QPainter& painter)
{
    PageFlow flow(device, painter);
    flow.setFoot(words(reportFoot()));
    flow.text(takeAwayText("At home"), {17.0, true});
    flow.text(plain(page.member.name.empty() ? page.member.code : page.member.name), {11.0});
    flow.text(takeAwayText("%1. With %2.")
                  .arg(longDate(page.asOf),
                       page.kit == HomeKit::Dumbbells ? takeAwayText("dumbbells")
                                                      : takeAwayText("body weight alone")),
              {9.0, false, true});
    flow.rule();
    if (page.items.empty()) {
        flow.text(
            takeAwayText("Nothing that can be done at home at the moment. Ask your instructor."));
    }
    int number = 0;
    for (const TakeAwayItem& item : page.items) {
        paintItem(flow, item, ++number);
    }
    for (const Phrase& phrase : page.leftOut) {
        flow.text(words(phrase), {9.0});
    }
    flow.advance(flow.mm(1));
    paintStop(flow, page);
    flow.end();
}

} // namespace levelbar::ui
