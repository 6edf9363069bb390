// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QPalette>

class QApplication;

namespace levelbar::ui {

enum class ThemeChoice { Desktop, Light, Dark };

// The window's colours beside the palette. Left and right are the same two Okabe-Ito colours in
// both themes (Okabe and Ito 2008, told apart by colour-blind readers); shape leads all the same.
struct Colours {
    QColor left;
    QColor right;
    QColor band;    // an interval
    QColor quiet;   // secondary text, still readable
    QColor grid;    // lines behind a chart
    QColor warning; // safety first
    QColor shade;   // beyond the threshold
};

[[nodiscard]] Colours colours(const QPalette& palette);
[[nodiscard]] bool isDark(const QPalette& palette);
[[nodiscard]] QPalette lightPalette();
[[nodiscard]] QPalette darkPalette();

// Sets style, palette and font. Desktop: what the freedesktop portal says, else the lightness of
// the palette that the desktop gave.
void applyTheme(QApplication& application, ThemeChoice choice);

} // namespace levelbar::ui
