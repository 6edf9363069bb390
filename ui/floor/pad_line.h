// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/number_pad.h"

#include <QFrame>

class QKeyEvent;
class QLabel;

namespace levelbar::ui {

// The line in which the number pad is heard: what is typed, what it is asked, and whether keys
// come here now.
class PadLine : public QFrame {
    Q_OBJECT

public:
    explicit PadLine(QWidget* parent = nullptr);

    // question: its choices; empty when nothing is asked.
    void showTyped(const QString& typed, const QString& question);
Q_SIGNALS:
    void pressed(const PadKey& key);
    void takeBackWanted();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    // True when the key is one of the pad's; then it was sent on.
    bool hear(const QKeyEvent& event);
    void showHint();

    QLabel* m_typed;
    QLabel* m_hint;
    QString m_question;
};

} // namespace levelbar::ui
