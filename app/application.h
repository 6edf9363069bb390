// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report_order.h"
#include "ui/clock.h"
#include "ui/message_prompter.h"
#include "ui/theme.h"

#include <QApplication>
#include <QString>

#include <filesystem>
#include <memory>
#include <optional>

namespace levelbar {

// What the command line asks for.
struct DesktopOptions {
    QString logbook; // empty: none named
    bool demo = false;
    QString screenshots; // folder; empty: none wanted
    std::optional<ui::ThemeChoice> theme;
    ReportOrder report; // no member: none ordered
};

// The desktop program, put together: logbook, notifier, window. Keeps what flies through the event
// loop from ending the program.
class Application : public QApplication {
    Q_OBJECT

public:
    Application(int& argc, char** argv);
    ~Application() override;

    // Runs to the end; the exit status.
    int run(const DesktopOptions& options);

    bool notify(QObject* receiver, QEvent* event) override;

private:
    struct Session; // an open logbook with its window

    [[nodiscard]] std::optional<std::filesystem::path> choosePath(const DesktopOptions& options);
    [[nodiscard]] std::filesystem::path makeDemo();
    bool openLogbook(const std::filesystem::path& path);

    ui::Clock m_clock;
    ui::MessagePrompter m_prompter;
    std::filesystem::path m_demoFolder; // removed at the end; empty: none
    std::unique_ptr<Session> m_session;
};

} // namespace levelbar
