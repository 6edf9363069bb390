// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/background_review.h"

#include "storage/history_reader.h"
#include "storage/library_store.h"
#include "storage/side_store.h"
#include "storage/store_error.h"
#include "ui/change_notifier.h"

namespace levelbar::ui {

namespace {

constexpr int kJoinMilliseconds = 50;
constexpr int kPollMilliseconds = 2000;

struct Overtaken {}; // a newer request came

} // namespace

ReviewedRosterPointer
reviewRoster(const storage::Logbook& logbook, Day today, const std::function<bool()>& goesOn)
{
    auto roster = std::make_shared<ReviewedRoster>();
    roster->library = storage::LibraryStore(logbook).all();
    Reviewer reviewer(roster->library, today, storage::SideStore(logbook).reviewSettings());
    DayFactsReader facts(logbook, roster->library, today);
    try {
        storage::forEachHistory(logbook, today, [&](MemberHistory& history) {
            if (!goesOn()) {
                throw Overtaken{};
            }
            reviewer.add(history);
            facts.add(history);
        });
    } catch (const Overtaken&) {
        return nullptr;
    }
    roster->review = reviewer.finish();
    roster->facts = facts.finish(roster->review);
    return roster;
}

BackgroundReview::BackgroundReview(storage::Logbook& logbook,
                                   ChangeNotifier& notifier,
                                   Clock clock,
                                   QObject* parent)
    : QObject(parent)
    , m_logbook(logbook)
    , m_clock(std::move(clock))
    , m_newest(std::make_shared<std::atomic<quint64>>(0))
{
    qRegisterMetaType<ReviewedRosterPointer>();
    m_joining.setSingleShot(true);
    m_joining.setInterval(kJoinMilliseconds);
    connect(&m_joining, &QTimer::timeout, this, &BackgroundReview::start);
    connect(&notifier, &ChangeNotifier::changed, this, &BackgroundReview::request);
    if (!logbook.path().empty()) {
        m_worker = new ReviewWorker(logbook.path(), m_clock, m_newest); // deleted with the thread
        m_worker->moveToThread(&m_thread);
        connect(&m_thread, &QThread::finished, m_worker, &QObject::deleteLater);
        connect(&m_thread, &QThread::started, m_worker, &ReviewWorker::beginPolling);
        connect(m_worker, &ReviewWorker::finished, this, &BackgroundReview::take);
        connect(m_worker, &ReviewWorker::failed, this, &BackgroundReview::failed);
        connect(m_worker, &ReviewWorker::changedOutside, this, &BackgroundReview::request);
        m_thread.start();
    }
}

BackgroundReview::~BackgroundReview()
{
    ++*m_newest; // overtakes what is running
    m_thread.quit();
    m_thread.wait();
}

void BackgroundReview::request()
{
    m_joining.start();
}

void BackgroundReview::start()
{
    const quint64 number = ++*m_newest;
    if (m_worker != nullptr) {
        QMetaObject::invokeMethod(m_worker, [worker = m_worker, number] { worker->run(number); });
        return;
    }
    try {
        take(number, reviewRoster(m_logbook, m_clock.today(), [] { return true; }));
    } catch (const storage::StoreError& error) {
        Q_EMIT failed(QString::fromUtf8(error.what()));
    }
}

void BackgroundReview::take(quint64 number, const ReviewedRosterPointer& roster)
{
    if (number == m_newest->load()) {
        m_current = roster;
        Q_EMIT ready(roster);
    }
}

ReviewWorker::ReviewWorker(std::filesystem::path path,
                           Clock clock,
                           std::shared_ptr<std::atomic<quint64>> newest)
    : m_path(std::move(path))
    , m_clock(std::move(clock))
    , m_newest(std::move(newest))
{
}

ReviewWorker::~ReviewWorker() = default;

storage::Logbook& ReviewWorker::logbook()
{
    if (!m_logbook) {
        storage::OpenOptions options;
        options.mode = storage::OpenMode::ReadOnly;
        m_logbook = std::make_unique<storage::Logbook>(
            storage::Logbook::open(m_path, m_clock.now(), options));
    }
    return *m_logbook;
}

void ReviewWorker::run(quint64 number)
{
    const auto isNewest = [this, number] { return m_newest->load() == number; };
    if (!isNewest()) {
        return;
    }
    try {
        m_versionSeen = logbook().dataVersion();
        const auto roster = reviewRoster(logbook(), m_clock.today(), isNewest);
        if (roster) {
            Q_EMIT finished(number, roster);
        }
    } catch (const storage::StoreError& error) {
        m_logbook.reset(); // the next request opens it anew
        Q_EMIT failed(QString::fromUtf8(error.what()));
    }
}

void ReviewWorker::beginPolling()
{
    auto* timer = new QTimer(this);
    connect(timer, &QTimer::timeout, this, &ReviewWorker::poll);
    timer->start(kPollMilliseconds);
}

void ReviewWorker::poll()
{
    if (m_versionSeen < 0 || !m_logbook) {
        return;
    }
    try {
        if (m_logbook->dataVersion() != m_versionSeen) {
            m_versionSeen = m_logbook->dataVersion();
            Q_EMIT changedOutside();
        }
    } catch (const storage::StoreError&) {
        m_logbook.reset();
    }
}

} // namespace levelbar::ui
