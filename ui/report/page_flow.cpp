// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/report/page_flow.h"

#include "ui/theme.h"

#include <QCoreApplication>
#include <QFont>
#include <QGuiApplication>
#include <QLocale>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QTextOption>

namespace levelbar::ui {

namespace {

constexpr double kMillimetresPerInch = 25.4;
constexpr double kPointsPerInch = 72.0;
constexpr double kFootPoints = 7.5;
constexpr double kFootGap = 2.0; // mm
constexpr double kTallest = 1e6;

// Words that run from right to left keep their order; the place on the page stays the same.
QTextOption optionFor(const QString& text, Qt::Alignment alignment)
{
    QTextOption option(alignment | Qt::AlignAbsolute);
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    option.setTextDirection(text.isRightToLeft() ? Qt::RightToLeft : Qt::LeftToRight);
    return option;
}

} // namespace

PageFlow::PageFlow(QPagedPaintDevice& device, QPainter& painter, bool isTrial)
    : m_device(device)
    , m_painter(painter)
    , m_isTrial(isTrial)
    , m_dots(device.logicalDpiY())
    , m_width(device.width())
    , m_height(device.height())
{
}

void PageFlow::setFoot(const QString& text)
{
    m_foot = text;
    const double room = heightOf(m_foot, {kFootPoints, false, true}, m_width - mm(20));
    m_height = m_device.height() - room - mm(2.0 * kFootGap);
}

double PageFlow::mm(double millimetres) const
{
    return millimetres / kMillimetresPerInch * m_dots;
}

double PageFlow::point() const
{
    return m_dots / kPointsPerInch;
}

QFont PageFlow::font(const TextLook& look) const
{
    QFont result = QGuiApplication::font();
    result.setPixelSize(std::max(1, static_cast<int>(look.points * point())));
    result.setBold(look.isBold);
    return result;
}

void PageFlow::makeRoom(double height)
{
    if (m_y + height <= m_height || m_y <= 0.0) {
        return;
    }
    if (!m_isTrial) {
        paintFoot();
        m_device.newPage();
    }
    m_y = 0.0;
    ++m_pages;
}

double PageFlow::heightOf(const QString& text, const TextLook& look, double width) const
{
    if (text.isEmpty()) {
        return 0.0;
    }
    m_painter.setFont(font(look));
    return m_painter
        .boundingRect(QRectF(0.0, 0.0, width, kTallest), text, optionFor(text, Qt::AlignLeft))
        .height();
}

void PageFlow::draw(const QRectF& place,
                    const QString& text,
                    const TextLook& look,
                    Qt::Alignment alignment)
{
    if (m_isTrial || text.isEmpty()) {
        return;
    }
    const QPalette tones = lightPalette();
    m_painter.setFont(font(look));
    m_painter.setPen(look.isQuiet ? colours(tones).quiet : tones.color(QPalette::Text));
    m_painter.drawText(place, text, optionFor(text, alignment));
}

void PageFlow::text(const QString& text, const TextLook& look, double indent)
{
    const double left = mm(indent);
    const double height = heightOf(text, look, m_width - left);
    makeRoom(height);
    draw(QRectF(left, m_y, m_width - left, height), text, look);
    m_y += height;
}

void PageFlow::heading(const QString& text, double keepWith)
{
    const TextLook look{12.0, true};
    makeRoom(mm(4) + heightOf(text, look, m_width) + mm(keepWith));
    m_y += m_y > 0.0 ? mm(3.5) : 0.0;
    this->text(text, look);
    m_y += mm(0.8);
}

void PageFlow::rule()
{
    if (!m_isTrial) {
        m_painter.setPen(QPen(lightPalette().color(QPalette::Link), 1.6 * point()));
        m_painter.drawLine(QPointF(0.0, m_y + mm(1)), QPointF(m_width, m_y + mm(1)));
    }
    m_y += mm(2.5);
}

void PageFlow::paintFoot()
{
    if (m_foot.isEmpty()) {
        return;
    }
    const TextLook look{kFootPoints, false, true};
    const double top = m_height + mm(2.0 * kFootGap);
    m_painter.setPen(QPen(colours(lightPalette()).quiet, 0.4 * point()));
    m_painter.drawLine(QPointF(0.0, top - mm(kFootGap / 2)),
                       QPointF(m_width, top - mm(kFootGap / 2)));
    const double height = m_device.height() - top;
    draw(QRectF(0.0, top, m_width - mm(20), height), m_foot, look);
    draw(QRectF(m_width - mm(20), top, mm(20), height),
         QCoreApplication::translate("PageFlow", "Page %1").arg(QLocale().toString(m_pages)),
         look,
         Qt::AlignRight);
}

void PageFlow::end()
{
    if (!m_isTrial) {
        paintFoot();
    }
}

} // namespace levelbar::ui
