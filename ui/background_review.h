// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/review.h"
#include "storage/logbook.h"
#include "ui/clock.h"
#include "ui/today/day_facts.h"

#include <QObject>
#include <QThread>
#include <QTimer>

#include <atomic>
#include <filesystem>
#include <functional>
#include <memory>

namespace levelbar::ui {

class ChangeNotifier;

// A review with the library it speaks about and the facts of the day. Shared and never changed.
struct ReviewedRoster {
    Library library;
    Review review;
    DayFacts facts;
};

using ReviewedRosterPointer = std::shared_ptr<const ReviewedRoster>;

class ReviewWorker;

// Keeps the review of the roster up to date: in a thread with a connection of its own for a file,
// at once for a logbook in memory. The newest request wins; bursts are joined. Writes from
// outside are noticed within a few seconds.
class BackgroundReview : public QObject {
    Q_OBJECT

public:
    BackgroundReview(storage::Logbook& logbook,
                     ChangeNotifier& notifier,
                     Clock clock,
                     QObject* parent = nullptr);
    ~BackgroundReview() override; // waits for the thread, whose connection is closed then

    void request();

    // The last one that was finished; null before the first.
    [[nodiscard]] ReviewedRosterPointer current() const { return m_current; }

Q_SIGNALS:
    void ready(const levelbar::ui::ReviewedRosterPointer& roster);
    void failed(const QString& sentence);

private:
    void start();
    void take(quint64 number, const ReviewedRosterPointer& roster);

    storage::Logbook& m_logbook;
    Clock m_clock;
    QTimer m_joining;
    QThread m_thread;
    ReviewWorker* m_worker = nullptr; // lives in m_thread
    std::shared_ptr<std::atomic<quint64>> m_newest;
    ReviewedRosterPointer m_current;
};

// The part that runs in the thread.
class ReviewWorker : public QObject {
    Q_OBJECT

public:
    ReviewWorker(std::filesystem::path path,
                 Clock clock,
                 std::shared_ptr<std::atomic<quint64>> newest);
    ~ReviewWorker() override;

    void run(quint64 number);
    void beginPolling();

Q_SIGNALS:
    void finished(quint64 number, const levelbar::ui::ReviewedRosterPointer& roster);
    void failed(const QString& sentence);
    void changedOutside();

private:
    void poll();
    storage::Logbook& logbook();

    std::filesystem::path m_path;
    Clock m_clock;
    std::shared_ptr<std::atomic<quint64>> m_newest;
    std::unique_ptr<storage::Logbook> m_logbook;
    std::int64_t m_versionSeen = -1;
};

// Reads everyone's history and reviews it. `goesOn` is asked between people; null when it said no.
[[nodiscard]] ReviewedRosterPointer
reviewRoster(const storage::Logbook& logbook, Day today, const std::function<bool()>& goesOn);

} // namespace levelbar::ui

Q_DECLARE_METATYPE(levelbar::ui::ReviewedRosterPointer)
