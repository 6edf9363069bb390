// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/figures.h"

#include <QWidget>

#include <optional>

class QLabel;
class QLineEdit;
class QPushButton;

namespace levelbar::ui {

// Below the chart: all that is known of the chosen person's difference, and the reason that the
// instructor knows for it.
class SideCard : public QWidget {
    Q_OBJECT

public:
    explicit SideCard(QWidget* parent = nullptr);

    void show(const std::optional<SidesRow>& row, Day asOf);
    void beginReason(); // the cursor goes where the reason is typed

Q_SIGNALS:
    void opened(levelbar::MemberId member);
    void reasonWanted(const QString& text);
    void reasonEnded();

private:
    std::optional<SidesRow> m_row;
    QLabel* m_words;
    QPushButton* m_open;
    QLineEdit* m_reason;
    QPushButton* m_keep;
    QPushButton* m_end;
};

} // namespace levelbar::ui
