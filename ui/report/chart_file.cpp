// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/report/chart_file.h"

#include "core/report/figure_table.h"
#include "ui/report/report_pages.h"
#include "ui/report/strength_plot.h"
#include "ui/theme.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QFontMetricsF>
#include <QGuiApplication>
#include <QImage>
#include <QPainter>
#include <QSvgGenerator>

#include <array>

namespace levelbar::ui {

namespace {

constexpr QSize kSize(960, 540);
constexpr int kPngScale = 2;
constexpr double kPoint = 1.5;
constexpr int kTitlePixels = 20;
constexpr int kSmallPixels = 13;
constexpr double kFileMargin = 24.0;

void paint(QPainter& painter, const ChartSubject& subject)
{
    const QPalette tones = lightPalette();
    const QRectF all(QPointF(0, 0), QSizeF(kSize));
    painter.fillRect(all, Qt::white);
    const QRectF inside = all.adjusted(kFileMargin, kFileMargin, -kFileMargin, -kFileMargin);
    QFont font = QGuiApplication::font();
    font.setPixelSize(kTitlePixels);
    font.setBold(true);
    painter.setFont(font);
    painter.setPen(tones.color(QPalette::Text));
    const QString who = subject.name.isEmpty() ? subject.code : subject.name;
    const QFontMetricsF metrics(font, painter.device());
    painter.drawText(QPointF(inside.left(), inside.top() + metrics.ascent()),
                     metrics.elidedText(subject.lift, Qt::ElideRight, inside.width()));
    font.setBold(false);
    font.setPixelSize(kSmallPixels);
    painter.setFont(font);
    painter.setPen(colours(tones).quiet);
    const QFontMetricsF small(font, painter.device());
    const QString line = QCoreApplication::translate("ChartFile", "%1. As seen on %2.")
                             .arg(who, longDate(subject.asOf));
    painter.drawText(QPointF(inside.left(), inside.top() + metrics.height() + small.ascent()),
                     small.elidedText(line, Qt::ElideRight, inside.width()));
    const double top = inside.top() + metrics.height() + 1.6 * small.height();
    const PlotLook look{QGuiApplication::font(), kPoint, 8.5};
    paintStrengthPlot(painter,
                      QRectF(QPointF(inside.left(), top),
                             QPointF(inside.right(), inside.bottom() - 2.0 * small.height())),
                      subject.figure,
                      subject.asOf,
                      look);
    const std::array<const StrengthFigure*, 1> figures = {&subject.figure};
    paintPlotLegend(painter,
                    QRectF(inside.left(),
                           inside.bottom() - 1.4 * small.height(),
                           inside.width(),
                           1.4 * small.height()),
                    figures,
                    look);
}

QByteArray png(const ChartSubject& subject)
{
    QImage image(kSize * kPngScale, QImage::Format_RGB32);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(kPngScale, kPngScale);
    paint(painter, subject);
    painter.end();
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return bytes;
}

QByteArray svg(const ChartSubject& subject)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setSize(kSize);
    generator.setViewBox(QRectF(QPointF(0, 0), QSizeF(kSize)));
    generator.setTitle(subject.lift);
    QPainter painter(&generator);
    paint(painter, subject);
    painter.end();
    return bytes;
}

} // namespace

QByteArray chartBytes(const ChartSubject& subject, ChartFormat format)
{
    switch (format) {
    case ChartFormat::Png:
        return png(subject);
    case ChartFormat::Svg:
        return svg(subject);
    case ChartFormat::Csv:
        break;
    }
    return QByteArray::fromStdString(figureCsv(subject.figure));
}

QString chartEnding(ChartFormat format)
{
    switch (format) {
    case ChartFormat::Png:
        return QStringLiteral("png");
    case ChartFormat::Svg:
        return QStringLiteral("svg");
    case ChartFormat::Csv:
        break;
    }
    return QStringLiteral("csv");
}

} // namespace levelbar::ui
