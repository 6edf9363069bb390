// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/prompter.h"

class QWidget;

namespace levelbar::ui {

// Asks and tells by message boxes over the window.
class MessagePrompter : public Prompter {
public:
    // The parent may be null and may be set later; it is not owned.
    void setParent(QWidget* parent) { m_parent = parent; }

    void tellFailure(const QString& what, const QString& whatNext) override;
    [[nodiscard]] bool confirm(const QString& question, const QString& action) override;

private:
    QWidget* m_parent = nullptr;
};

} // namespace levelbar::ui
