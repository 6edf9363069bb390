// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFileDialog>
#include <QString>

#include <functional>

namespace levelbar::ui {

// Asks where to save a file: the proposed name with its ending in, a path out, or nothing when the
// person thought better of it. Tests answer in its place.
using FileChooser = std::function<QString(QWidget* parent, const QString& proposal)>;

[[nodiscard]] inline QString chooseFileToSave(QWidget* parent, const QString& proposal)
{
    const QString ending = proposal.section(QLatin1Char('.'), -1);
    const QString chosen = QFileDialog::getSaveFileName(
        parent, QFileDialog::tr("Save"), proposal, QStringLiteral("*.%1").arg(ending));
    const bool isWhole = chosen.isEmpty() || chosen.endsWith(QLatin1Char('.') + ending);
    return isWhole ? chosen : chosen + QLatin1Char('.') + ending;
}

} // namespace levelbar::ui
