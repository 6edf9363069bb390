// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/figures.h"
#include "core/sides/side_records.h"

#include <QWidget>

#include <optional>

class QCheckBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace levelbar::ui {

// Below the chart: all that is known of the chosen person's difference, how it is trained, and the
// reason that the instructor knows for it.
class SideCard : public QWidget {
    Q_OBJECT

public:
    explicit SideCard(QWidget* parent = nullptr);

    // `running`: how the difference is trained now.
    void show(const std::optional<SidesRow>& row,
              Day asOf,
              const std::optional<SidePrescription>& running = std::nullopt);
    void beginReason(); // the cursor goes where the reason is typed

Q_SIGNALS:
    void opened(levelbar::MemberId member);
    void reasonWanted(const QString& text);
    void reasonEnded();
    // One set more for the weaker side, or no longer; training that way begins with it.
    void extraSetWanted(bool isWanted);
    void trainingEnded();

private:
    QWidget* buildTraining();
    void showTraining(Day asOf);

    std::optional<SidesRow> m_row;
    QLabel* m_words;
    QPushButton* m_open;
    QLineEdit* m_reason;
    QPushButton* m_keep;
    QPushButton* m_end;
    std::optional<SidePrescription> m_running;
    QWidget* m_training;
    QLabel* m_trained;
    QCheckBox* m_extra;
    QPushButton* m_endTraining;
};

} // namespace levelbar::ui
