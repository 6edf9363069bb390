// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/message_prompter.h"

#include <QMessageBox>
#include <QPushButton>

namespace levelbar::ui {

void MessagePrompter::tellFailure(const QString& what, const QString& whatNext)
{
    QMessageBox box(
        QMessageBox::Warning, QMessageBox::tr("Not done"), what, QMessageBox::Close, m_parent);
    box.setInformativeText(whatNext);
    box.setObjectName(QStringLiteral("failureBox"));
    box.exec();
}

bool MessagePrompter::confirm(const QString& question, const QString& action)
{
    QMessageBox box(QMessageBox::Question, action, question, QMessageBox::Cancel, m_parent);
    const QPushButton* yes = box.addButton(action, QMessageBox::AcceptRole);
    box.setObjectName(QStringLiteral("questionBox"));
    box.exec();
    return box.clickedButton() == yes;
}

} // namespace levelbar::ui
