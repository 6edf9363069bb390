// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/member_sides_figure.h"

#include <QPalette>
#include <QPointF>

class QPainter;

namespace levelbar::ui {

inline constexpr double kSideMark = 4.0; // radius of a set's mark

enum class SideMark { Set, AtLeast, Test };

// Left hollow, right filled; a test is a diamond, what only says "at least" an arrowhead upwards.
void paintSideMark(
    QPainter& painter, const QPointF& at, Side side, SideMark mark, const QPalette& palette);

// Where both sides were compared: a dot for sets, a ring with a dot for an open pair, a diamond
// for a test.
void paintPairMark(QPainter& painter, const QPointF& at, PairKind kind, const QPalette& palette);

} // namespace levelbar::ui
