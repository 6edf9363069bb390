// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/report/group_summary.h"
#include "core/report/person_report.h"
#include "core/report/take_away.h"

class QPagedPaintDevice;
class QPainter;
class QString;

namespace levelbar::ui {

// One function a report: paints its pages. The painter must be active on the device.
void paintPages(const PersonReport& report, QPagedPaintDevice& device, QPainter& painter);
void paintPages(const TakeAway& page, QPagedPaintDevice& device, QPainter& painter);
void paintPages(const GroupSummary& summary, QPagedPaintDevice& device, QPainter& painter);

// "20 November 2026" in the window's language.
[[nodiscard]] QString longDate(Day day);

} // namespace levelbar::ui
