// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

class QApplication;

namespace levelbar::ui {
class MainWindow;
}

namespace levelbar {

// Writes a PNG of every page, in both themes and at two sizes, into the folder. False when a page
// could not be shown or a file not be written.
bool writeScreenshots(QApplication& application, ui::MainWindow& window, const QString& folder);

} // namespace levelbar
