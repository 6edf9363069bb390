// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/report/group_summary.h"
#include "core/report/person_report.h"
#include "core/report/take_away.h"

#include <QByteArray>
#include <QPageLayout>
#include <QString>

#include <filesystem>
#include <variant>

class QPagedPaintDevice;

namespace levelbar::ui {

// What can be printed: the same content goes to the preview, the printer and the file.
using ReportContent = std::variant<PersonReport, TakeAway, GroupSummary>;

enum class Paper { A4, Letter };

// The paper upright, with its margins; of a half-page half the paper: A5, or half a letter.
[[nodiscard]] QPageLayout pageLayoutOf(const ReportContent& content, Paper paper);

// "Person M001", "At home M001", "Summary 2026-09-01 to 2026-11-20": for file and document names.
[[nodiscard]] QString titleOf(const ReportContent& content);

// Paints all pages on the device, whose layout has been set, as shapes and text.
void paintReport(const ReportContent& content, QPagedPaintDevice& device);

[[nodiscard]] QByteArray pdfOf(const ReportContent& content, Paper paper);

// Writes the file whole or not at all; StoreError when it cannot be.
void saveBytes(const std::filesystem::path& path, const QByteArray& bytes);

} // namespace levelbar::ui
