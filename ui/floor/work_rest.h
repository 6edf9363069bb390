// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QString>
#include <QTimer>

namespace levelbar::ui {

// Work and rest in turns, second by second.
class WorkRest : public QObject {
    Q_OBJECT

public:
    explicit WorkRest(QObject* parent = nullptr);

    // Both from 5 to 600 s; begins anew with work, stopped.
    void setSeconds(int work, int rest);
    // Runs, or stands still where it is.
    void toggle();
    void reset();
    // One second has passed.
    void tick();

    [[nodiscard]] bool isRunning() const { return m_clock.isActive(); }

    [[nodiscard]] bool isWork() const { return m_isWork; }

    [[nodiscard]] bool isFresh() const { return m_isWork && m_left == m_work && !isRunning(); }

    // "Work 0:35".
    [[nodiscard]] QString text() const;

Q_SIGNALS:
    void changed();

private:
    int m_work = 40; // common practice, no source
    int m_rest = 80;
    int m_left = 40;
    bool m_isWork = true;
    QTimer m_clock;
};

} // namespace levelbar::ui
