// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sides/side_difference.h"
#include "core/trend/trend.h"
#include "ui/theme.h"

#include <QRectF>

class QPainter;

namespace levelbar::ui {

// The tilt glyph, after a spirit level: a short bar whose low end is the weaker side and carries
// its letter; dashed while in doubt, level when no side is clear. Steeper the larger the
// difference. Left is hollow, right is filled.
void paintTilt(QPainter& painter,
               const QRectF& place,
               const SideReview& side,
               const QPalette& palette);

// The trend glyph: a line that rises or falls as the strength did, in a fan as wide as its doubt;
// three dots when it is too early.
void paintTrend(QPainter& painter,
                const QRectF& place,
                const Trend& trend,
                const QPalette& palette);

// Whether the glyph tilts at all: the side must be likely enough to be named.
[[nodiscard]] bool hasClearSide(const SideReview& side);

} // namespace levelbar::ui
