// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/emergency/incident_pages.h"

#include "ui/report/page_flow.h"
#include "ui/report/report_pages.h"
#include "ui/words.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>

namespace levelbar::ui {

namespace {

constexpr int kDotsPerInch = 300;
constexpr double kPageMargin = 18.0; // mm
constexpr double kSignature = 14.0;  // mm, room to sign

QString pageText(const char* text)
{
    return QCoreApplication::translate("IncidentPages", text);
}

void paintPart(PageFlow& flow, const QString& title, const std::string& text)
{
    flow.heading(title);
    flow.text(text.empty() ? pageText("Nothing written.") : plain(text), {10.5});
    flow.advance(flow.mm(3));
}

void paintSignature(PageFlow& flow, const QString& whose)
{
    flow.makeRoom(flow.mm(kSignature + 8));
    flow.advance(flow.mm(kSignature));
    flow.rule();
    flow.text(whose, {8.5, false, true});
}

void paintIncident(PageFlow& flow, const storage::Incident& incident, const QString& who)
{
    flow.setFoot(pageText("Names a person: keep it where only those can read it who must."));
    flow.text(pageText("Report of an incident"), {16.0, true});
    const QString day = longDate(incident.day);
    flow.text(incident.at ? pageText("%1, %2").arg(day, plain(text(*incident.at))) : day, {10.5});
    flow.rule();
    paintPart(flow, pageText("Who"), who.toStdString());
    paintPart(flow, pageText("What happened"), incident.what);
    paintPart(flow, pageText("First aid"), incident.firstAid);
    paintPart(flow, pageText("Who saw it"), incident.witness);
    paintPart(flow, pageText("What follows"), incident.followUp);
    paintPart(flow, pageText("Written by"), incident.writtenBy);
    paintSignature(flow, pageText("Day and signature of who wrote it"));
    paintSignature(flow, pageText("Day and signature of who saw it"));
    flow.end();
}

} // namespace

QByteArray incidentPdf(const storage::Incident& incident, const QString& who)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(kDotsPerInch);
    writer.setTitle(pageText("Report of an incident"));
    writer.setCreator(QStringLiteral("Levelbar"));
    writer.setPageLayout(QPageLayout(QPageSize(QPageSize::A4),
                                     QPageLayout::Portrait,
                                     QMarginsF(kPageMargin, kPageMargin, kPageMargin, kPageMargin),
                                     QPageLayout::Millimeter));
    QPainter painter(&writer);
    PageFlow flow(writer, painter);
    paintIncident(flow, incident, who);
    painter.end();
    return bytes;
}

} // namespace levelbar::ui
