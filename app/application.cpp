// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/application.h"

#include "app/demo_gym.h"
#include "app/screenshots.h"
#include "storage/logbook.h"
#include "storage/store_error.h"
#include "ui/main_window.h"
#include "ui/perform.h"
#include "ui/workspace.h"

#include <QDateTime>
#include <QDir>
#include <QFileDialog>
#include <QStandardPaths>
#include <QTimer>
#include <QUuid>

#include <cstdio>

namespace levelbar {

namespace {

ui::Clock systemClock()
{
    return {[] { return Moment{QDateTime::currentMSecsSinceEpoch()}; },
            [] {
                const QDate today = QDate::currentDate();
                return dayOf({today.year(), today.month(), today.day()}).value_or(Day{});
            }};
}

// The Monday after the demo's last class, so that the invented gym has an hour before it.
ui::Clock demoClock(ui::Clock clock)
{
    clock.today = [] { return parseDay("2026-11-23").value_or(Day{}); };
    return clock;
}

} // namespace

struct Application::Session {
    Session(storage::Logbook opened, const ui::Clock& clock, ui::Prompter& prompter)
        : logbook(std::move(opened))
        , workspace{logbook, notifier, clock, prompter}
        , window(std::make_unique<ui::MainWindow>(workspace))
    {
    }

    ~Session()
    {
        window.reset(); // ends the review's thread and connection before the writer closes
    }

    Session(const Session&) = delete;
    Session& operator=(const Session&) = delete;

    storage::Logbook logbook;
    ui::ChangeNotifier notifier;
    ui::Workspace workspace;
    std::unique_ptr<ui::MainWindow> window;
};

Application::Application(int& argc, char** argv)
    : QApplication(argc, argv)
    , m_clock(systemClock())
{
    setApplicationName(QStringLiteral("levelbar"));
    setOrganizationName(QStringLiteral("levelbar"));
    setApplicationVersion(QStringLiteral("0.1.0"));
}

Application::~Application()
{
    m_session.reset();
    if (!m_demoFolder.empty()) {
        std::error_code ignored;
        std::filesystem::remove_all(m_demoFolder, ignored);
    }
}

std::filesystem::path Application::makeDemo()
{
    m_demoFolder = std::filesystem::temp_directory_path() /
                   ("levelbar-demo-" + QUuid::createUuid().toString(QUuid::Id128).toStdString());
    std::filesystem::create_directory(m_demoFolder);
    std::filesystem::permissions(m_demoFolder, std::filesystem::perms::owner_all);
    std::filesystem::path path = m_demoFolder / "demo.levelbar";
    storage::Logbook logbook = storage::Logbook::create(path, m_clock.now());
    const storage::ImportReport report = addDemoGym(logbook, m_clock.now());
    if (!report.faults.empty()) {
        throw storage::StoreError(storage::StoreErrorKind::Other, text(report.faults.front()));
    }
    logbook.close();
    return path;
}

std::optional<std::filesystem::path> Application::choosePath(const DesktopOptions& options)
{
    if (options.demo) {
        m_clock = demoClock(m_clock);
        return makeDemo();
    }
    if (!options.logbook.isEmpty()) {
        return options.logbook.toStdString();
    }
    const QString chosen = QFileDialog::getSaveFileName(nullptr,
                                                        tr("Open a logbook, or name a new one"),
                                                        QDir::homePath(),
                                                        tr("Logbooks (*.levelbar)"),
                                                        nullptr,
                                                        QFileDialog::DontConfirmOverwrite);
    if (chosen.isEmpty()) {
        return std::nullopt;
    }
    const bool hasEnding = chosen.endsWith(QLatin1String(".levelbar"));
    return (hasEnding ? chosen : chosen + QStringLiteral(".levelbar")).toStdString();
}

bool Application::openLogbook(const std::filesystem::path& path)
{
    const QString name = QString::fromStdString(path.string());
    const bool isNew = !std::filesystem::exists(path);
    if (isNew &&
        !m_prompter.confirm(tr("There is no logbook %1 yet. Make it?").arg(name), tr("Make it"))) {
        return false;
    }
    return ui::perform(m_prompter, [&] {
        storage::Logbook logbook = isNew ? storage::Logbook::create(path, m_clock.now())
                                         : storage::Logbook::open(path, m_clock.now());
        m_session = std::make_unique<Session>(std::move(logbook), m_clock, m_prompter);
        m_prompter.setParent(m_session->window.get());
    });
}

int Application::run(const DesktopOptions& options)
{
    if (!options.report.member.isEmpty()) {
        return writeReport(options.report, options.logbook, m_clock);
    }
    ui::applyTheme(*this, options.theme.value_or(ui::ThemeChoice::Desktop));
    try {
        const auto path = choosePath(options);
        if (!path) {
            return 0;
        }
        if (!openLogbook(*path)) {
            return 1;
        }
    } catch (const storage::StoreError& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return 3;
    }
    if (!options.screenshots.isEmpty()) {
        return writeScreenshots(*this, *m_session->window, options.screenshots) ? 0 : 1;
    }
    m_session->window->show();
    return exec();
}

bool Application::notify(QObject* receiver, QEvent* event)
{
    // The last net: what a slot let through is told, and the program goes on.
    try {
        return QApplication::notify(receiver, event);
    } catch (const std::exception& error) {
        m_prompter.tellFailure(QString::fromUtf8(error.what()),
                               tr("Close and open the logbook again."));
    }
    return false;
}

} // namespace levelbar
