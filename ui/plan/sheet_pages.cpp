// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/plan/sheet_pages.h"

#include "ui/report/page_flow.h"
#include "ui/report/report_pages.h"
#include "ui/words.h"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr double kNumberWidth = 8.0; // mm
constexpr double kNameWidth = 42.0;
constexpr double kBox = 9.0; // high enough for a pencil
constexpr double kAimHeight = 5.0;
constexpr double kRowGap = 2.5;
constexpr double kHairline = 0.25;
constexpr int kMostBoxes = 6;

QString sheetText(const char* text)
{
    return QCoreApplication::translate("SheetPages", text);
}

class SheetPainter {
public:
    SheetPainter(PageFlow& flow, const MeetingSheet& sheet)
        : m_flow(flow)
        , m_sheet(sheet)
        , m_column((flow.width() - flow.mm(kNumberWidth + kNameWidth)) /
                   static_cast<double>(std::max<std::size_t>(1, sheet.exercises.size())))
    {
    }

    void paint()
    {
        m_flow.setFoot(
            sheetText("Sheet %1. Write reps, and reps in reserve after a point: 9.2. An empty "
                      "box is not known.")
                .arg(m_sheet.number));
        const QString when = m_sheet.start ? sheetText("%1, %2").arg(longDate(m_sheet.day),
                                                                     plain(text(*m_sheet.start)))
                                           : longDate(m_sheet.day);
        m_flow.draw(QRectF(0, m_flow.y(), m_flow.width(), m_flow.mm(9)),
                    sheetText("Sheet %1").arg(m_sheet.number),
                    {16.0, true},
                    Qt::AlignRight);
        m_flow.text(m_sheet.className, {16.0, true});
        m_flow.text(when, {10.0});
        m_flow.rule();
        for (const SheetRack& rack : m_sheet.racks) {
            paintRack(rack);
        }
        m_flow.end();
    }

private:
    void paintRack(const SheetRack& rack)
    {
        m_flow.heading(rack.title, 2 * (kAimHeight + kBox + kRowGap));
        const TextLook look{8.5, true};
        const double wide = m_column - m_flow.mm(2);
        double high = m_flow.mm(kAimHeight);
        for (const QString& exercise : m_sheet.exercises) {
            high = std::max(high, m_flow.heightOf(exercise, look, wide));
        }
        for (std::size_t place = 0; place < m_sheet.exercises.size(); ++place) {
            m_flow.draw(
                QRectF(left(place), m_flow.y(), wide, high), m_sheet.exercises[place], look);
        }
        m_flow.advance(high);
        for (const SheetRow& row : rack.rows) {
            paintRow(row);
        }
    }

    void paintRow(const SheetRow& row)
    {
        const double high = m_flow.mm(kAimHeight + kBox + kRowGap);
        m_flow.makeRoom(high);
        const double top = m_flow.y();
        m_flow.draw(QRectF(0, top, m_flow.mm(kNumberWidth), high),
                    QString::number(row.number),
                    {10.0, true});
        m_flow.draw(QRectF(m_flow.mm(kNumberWidth), top, m_flow.mm(kNameWidth - 2), high),
                    row.name,
                    {10.5, true});
        for (std::size_t place = 0; place < row.cells.size(); ++place) {
            paintCell(row.cells[place], left(place), top);
        }
        m_flow.advance(high);
    }

    void paintCell(const SheetCell& cell, double x, double top)
    {
        if (cell.sets == 0) {
            return;
        }
        m_flow.draw(QRectF(x, top, m_column - m_flow.mm(2), m_flow.mm(kAimHeight)), cell.aim);
        if (m_flow.isTrial()) {
            return;
        }
        const int boxes = std::min(cell.sets, kMostBoxes);
        const double wide = std::min(m_flow.mm(14), (m_column - m_flow.mm(2)) / boxes);
        QPainter& painter = m_flow.painter();
        painter.save();
        painter.setPen(QPen(Qt::black, m_flow.mm(kHairline)));
        painter.setBrush(Qt::NoBrush);
        for (int box = 0; box < boxes; ++box) {
            painter.drawRect(
                QRectF(x + box * wide, top + m_flow.mm(kAimHeight), wide, m_flow.mm(kBox)));
        }
        painter.restore();
    }

    [[nodiscard]] double left(std::size_t place) const
    {
        return m_flow.mm(kNumberWidth + kNameWidth) + static_cast<double>(place) * m_column;
    }

    PageFlow& m_flow;
    const MeetingSheet& m_sheet;
    double m_column;
};

} // namespace

void paintPages(const MeetingSheet& sheet, QPagedPaintDevice& device, QPainter& painter)
{
    PageFlow flow(device, painter);
    SheetPainter(flow, sheet).paint();
}

} // namespace levelbar::ui
