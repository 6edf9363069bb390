// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QPalette>

// The class floor's colours, mixed from the palette, so that light and dark follow the desktop.
namespace levelbar::ui {

[[nodiscard]] QColor dimTextColour(const QPalette& palette);    // plans, what is not done yet
[[nodiscard]] QColor lineColour(const QPalette& palette);       // between cells
[[nodiscard]] QColor strongLineColour(const QPalette& palette); // between exercises
[[nodiscard]] QColor doneColour(const QPalette& palette);       // behind what is done
[[nodiscard]] QColor groupColour(const QPalette& palette, bool isOdd);
[[nodiscard]] QColor faultColour(const QPalette& palette); // around what was refused

} // namespace levelbar::ui
