// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/work_rest.h"

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kShortest = 5;
constexpr int kLongest = 600;

} // namespace

WorkRest::WorkRest(QObject* parent)
    : QObject(parent)
{
    m_clock.setInterval(1000);
    m_clock.setTimerType(Qt::PreciseTimer);
    connect(&m_clock, &QTimer::timeout, this, &WorkRest::tick);
}

void WorkRest::setSeconds(int work, int rest)
{
    m_work = std::clamp(work, kShortest, kLongest);
    m_rest = std::clamp(rest, kShortest, kLongest);
    reset();
}

void WorkRest::toggle()
{
    if (m_clock.isActive()) {
        m_clock.stop();
    } else {
        m_clock.start();
    }
    Q_EMIT changed();
}

void WorkRest::reset()
{
    m_clock.stop();
    m_isWork = true;
    m_left = m_work;
    Q_EMIT changed();
}

void WorkRest::tick()
{
    if (--m_left <= 0) {
        m_isWork = !m_isWork;
        m_left = m_isWork ? m_work : m_rest;
    }
    Q_EMIT changed();
}

QString WorkRest::text() const
{
    const QString time =
        QStringLiteral("%1:%2").arg(m_left / 60).arg(m_left % 60, 2, 10, QLatin1Char('0'));
    return m_isWork ? tr("Work %1").arg(time) : tr("Rest %1").arg(time);
}

} // namespace levelbar::ui
