// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/clock.h"

#include <QString>

class QCommandLineParser;

namespace levelbar {

// A person's page to write without a window: what levelbar-cli asks of the desktop program, by
// options that --help does not name.
struct ReportOrder {
    QString member; // empty: nothing ordered
    QString pdf;
    QString on;    // empty: today
    QString paper; // "a4" or "letter"
};

void addReportOptions(QCommandLineParser& parser);
[[nodiscard]] ReportOrder reportOrder(const QCommandLineParser& parser);

// Reads the logbook without changing it and writes the file whole or not at all. The exit status:
// 0 done, 1 no such person, 2 wrong usage, 3 the logbook or the file is the trouble; one line on
// standard error says which.
[[nodiscard]] int
writeReport(const ReportOrder& order, const QString& logbook, const ui::Clock& clock);

} // namespace levelbar
