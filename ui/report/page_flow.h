// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QRectF>
#include <QString>

class QFont;
class QPagedPaintDevice;
class QPainter;

namespace levelbar::ui {

struct TextLook {
    double points = 9.5;
    bool isBold = false;
    bool isQuiet = false;
};

// Blocks that run down the pages of a paged device, top to bottom. A block never breaks: what does
// not fit goes on to the next page whole. A trial run measures and paints nothing.
class PageFlow {
public:
    // The painter must be active on the device.
    PageFlow(QPagedPaintDevice& device, QPainter& painter, bool isTrial = false);

    void setFoot(const QString& text); // on every page, with the page's number

    [[nodiscard]] double mm(double millimetres) const;
    [[nodiscard]] double point() const; // 1/72 inch

    [[nodiscard]] double width() const { return m_width; }

    [[nodiscard]] double y() const { return m_y; }

    [[nodiscard]] int pages() const { return m_pages; }

    [[nodiscard]] bool isTrial() const { return m_isTrial; }

    [[nodiscard]] QPainter& painter() { return m_painter; }

    // Begins a new page when less than this is left of the page.
    void makeRoom(double height);

    void advance(double height) { m_y += height; }

    // Text in a place of its own; words that are too long for it are broken.
    [[nodiscard]] double heightOf(const QString& text, const TextLook& look, double width) const;
    void draw(const QRectF& place,
              const QString& text,
              const TextLook& look = {},
              Qt::Alignment alignment = Qt::AlignLeft);

    // A block of text over the page's width, less an indent on the left, in millimetres.
    void text(const QString& text, const TextLook& look = {}, double indent = 0.0);
    void heading(const QString& text, double keepWith = 18.0); // with so many mm of what follows
    void rule();

    void end(); // paints the last page's foot

private:
    void paintFoot();
    [[nodiscard]] QFont font(const TextLook& look) const;

    QPagedPaintDevice& m_device;
    QPainter& m_painter;
    bool m_isTrial;
    double m_dots; // device units an inch
    double m_width;
    double m_height; // without the foot
    double m_y = 0.0;
    int m_pages = 1;
    QString m_foot;
};

} // namespace levelbar::ui
