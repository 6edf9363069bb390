// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report_order.h"

#include "storage/member_store.h"
#include "storage/store_error.h"
#include "ui/report/report_content.h"
#include "ui/report/report_reader.h"

#include <QCommandLineParser>

#include <cstdio>

namespace levelbar {

namespace {

constexpr int kDone = 0;
constexpr int kInputAtFault = 1;
constexpr int kWrongUsage = 2;
constexpr int kLogbookTrouble = 3;

QCommandLineOption hidden(const char* name)
{
    QCommandLineOption option(QString::fromLatin1(name), QString(), QStringLiteral("VALUE"));
    option.setFlags(QCommandLineOption::HiddenFromHelp);
    return option;
}

int write(const ReportOrder& order, const QString& name, Day asOf, const ui::Clock& clock)
{
    storage::OpenOptions options;
    options.mode = storage::OpenMode::ReadOnly;
    const auto logbook = storage::Logbook::open(name.toStdString(), clock.now(), options);
    const std::string code = order.member.toStdString();
    const auto member = storage::MemberStore(logbook).find(code);
    if (!member) {
        std::fprintf(
            stderr, "%s: there is no member '%s'\n", qPrintable(name), excerpt(code).c_str());
        return kInputAtFault;
    }
    const auto roster = ui::reviewRoster(logbook, asOf, [] { return true; });
    const auto report = ui::readPersonReport(logbook, *roster, member->id);
    if (!report) {
        std::fprintf(stderr,
                     "%s: '%s' is archived; bring them back first\n",
                     qPrintable(name),
                     excerpt(code).c_str());
        return kInputAtFault;
    }
    const ui::Paper paper =
        order.paper == QLatin1String("letter") ? ui::Paper::Letter : ui::Paper::A4;
    ui::saveBytes(order.pdf.toStdString(), ui::pdfOf(*report, paper));
    return kDone;
}

} // namespace

void addReportOptions(QCommandLineParser& parser)
{
    parser.addOptions(
        {hidden("report-member"), hidden("pdf"), hidden("report-on"), hidden("paper")});
}

ReportOrder reportOrder(const QCommandLineParser& parser)
{
    return {parser.value(QStringLiteral("report-member")),
            parser.value(QStringLiteral("pdf")),
            parser.value(QStringLiteral("report-on")),
            parser.value(QStringLiteral("paper"))};
}

int writeReport(const ReportOrder& order, const QString& logbook, const ui::Clock& clock)
{
    const auto on =
        order.on.isEmpty() ? Result<Day>(clock.today()) : parseDay(order.on.toStdString());
    if (!on || order.pdf.isEmpty() || logbook.isEmpty()) {
        std::fprintf(stderr, "A report needs --pdf FILE, a logbook, and a date like 2026-11-25.\n");
        return kWrongUsage;
    }
    try {
        return write(order, logbook, *on, clock);
    } catch (const storage::StoreError& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return kLogbookTrouble;
    }
}

} // namespace levelbar
