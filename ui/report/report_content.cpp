// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/report/report_content.h"

#include "storage/whole_file.h"
#include "ui/report/page_flow.h"
#include "ui/report/report_pages.h"
#include "ui/words.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>

#include <ostream>

namespace levelbar::ui {

namespace {

constexpr int kDotsPerInch = 1200;
constexpr double kMargin = 15.0; // mm
constexpr double kHalfPageMargin = 10.0;

struct Title {
    QString operator()(const PersonReport& report) const
    {
        return tr("Person %1").arg(plain(report.member.code));
    }

    QString operator()(const TakeAway& page) const
    {
        return tr("At home %1").arg(plain(page.member.code));
    }

    QString operator()(const GroupSummary& summary) const
    {
        return tr("Summary %1 to %2").arg(plain(isoText(summary.from)), plain(isoText(summary.to)));
    }

    static QString tr(const char* text)
    {
        return QCoreApplication::translate("ReportContent", text);
    }
};

QPageSize sizeOf(bool isHalf, Paper paper)
{
    if (paper == Paper::A4) {
        return QPageSize(isHalf ? QPageSize::A5 : QPageSize::A4);
    }
    return isHalf ? QPageSize(QSizeF(5.5, 8.5), QPageSize::Inch, QStringLiteral("Half letter"))
                  : QPageSize(QPageSize::Letter);
}

} // namespace

QPageLayout pageLayoutOf(const ReportContent& content, Paper paper)
{
    const bool isHalf = std::holds_alternative<TakeAway>(content);
    const double margin = isHalf ? kHalfPageMargin : kMargin;
    return QPageLayout(sizeOf(isHalf, paper),
                       QPageLayout::Portrait,
                       QMarginsF(margin, margin, margin, margin),
                       QPageLayout::Millimeter);
}

QString titleOf(const ReportContent& content)
{
    return std::visit(Title{}, content);
}

void paintReport(const ReportContent& content, QPagedPaintDevice& device)
{
    QPainter painter(&device);
    std::visit([&](const auto& page) { paintPages(page, device, painter); }, content);
}

QByteArray pdfOf(const ReportContent& content, Paper paper)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(kDotsPerInch);
    writer.setTitle(titleOf(content));
    writer.setCreator(QStringLiteral("Levelbar"));
    writer.setPageLayout(pageLayoutOf(content, paper));
    paintReport(content, writer);
    return bytes;
}

void saveBytes(const std::filesystem::path& path, const QByteArray& bytes)
{
    storage::writeWholeFile(path,
                            [&](std::ostream& out) { out.write(bytes.data(), bytes.size()); });
}

} // namespace levelbar::ui
