// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/report/chart_saver.h"

#include "ui/perform.h"
#include "ui/report/report_content.h"

#include <QMenu>

namespace levelbar::ui {

ChartSaver::ChartSaver(Workspace& workspace, QWidget* parent)
    : QToolButton(parent)
    , m_workspace(workspace)
{
    setObjectName(QStringLiteral("saveChart"));
    setText(tr("Save chart"));
    setAccessibleName(tr("Save the chart into a file"));
    setFocusPolicy(Qt::StrongFocus);
    setPopupMode(QToolButton::InstantPopup);
    setMinimumHeight(34);
    setMenu(new QMenu(this));
    addFormat(tr("Picture (PNG)"), ChartFormat::Png);
    addFormat(tr("Drawing (SVG)"), ChartFormat::Svg);
    addFormat(tr("Numbers (CSV)"), ChartFormat::Csv);
    setEnabled(false);
}

void ChartSaver::addFormat(const QString& label, ChartFormat format)
{
    QAction* action = menu()->addAction(label, this, [this, format] { save(format); });
    action->setObjectName(QStringLiteral("saveChart_%1").arg(chartEnding(format)));
}

void ChartSaver::setSubject(ChartSubject subject)
{
    m_subject = std::move(subject);
    setEnabled(!m_subject.figure.dots.empty());
}

void ChartSaver::save(ChartFormat format)
{
    QString proposal =
        QStringLiteral("%1 %2.%3").arg(m_subject.code, m_subject.lift, chartEnding(format));
    proposal.replace(QLatin1Char('/'), QLatin1Char('-'));
    const QString path = m_chooser(this, proposal);
    if (!path.isEmpty()) {
        perform(m_workspace.prompter,
                [&] { saveBytes(path.toStdString(), chartBytes(m_subject, format)); });
    }
}

} // namespace levelbar::ui
