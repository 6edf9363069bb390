// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_colours.h"

#include "ui/theme.h"

namespace levelbar::ui {

namespace {

QColor mixed(const QColor& a, const QColor& b, double share)
{
    const auto part = [share](int x, int y) {
        return static_cast<int>((1.0 - share) * x + share * y);
    };
    return {part(a.red(), b.red()), part(a.green(), b.green()), part(a.blue(), b.blue())};
}

QColor base(const QPalette& palette)
{
    return palette.color(QPalette::Base);
}

QColor ink(const QPalette& palette)
{
    return palette.color(QPalette::Text);
}

} // namespace

QColor dimTextColour(const QPalette& palette)
{
    return mixed(base(palette), ink(palette), 0.62);
}

QColor lineColour(const QPalette& palette)
{
    return mixed(base(palette), ink(palette), 0.15);
}

QColor strongLineColour(const QPalette& palette)
{
    return mixed(base(palette), ink(palette), 0.40);
}

QColor doneColour(const QPalette& palette)
{
    return mixed(base(palette), palette.color(QPalette::Highlight), 0.14);
}

QColor groupColour(const QPalette& palette, bool isOdd)
{
    return isOdd ? mixed(base(palette), ink(palette), 0.05) : base(palette);
}

QColor faultColour(const QPalette& palette)
{
    return colours(palette).warning;
}

} // namespace levelbar::ui
