// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/application.h"

#include <QCommandLineParser>

#include <cstdio>

int main(int argc, char** argv)
try {
    using namespace levelbar;
    Application application(argc, argv);
    QCommandLineParser parser;
    parser.setApplicationDescription(
        Application::tr("The desktop workstation of a strength and fitness instructor."));
    parser.addHelpOption();
    parser.addVersionOption();
    const QCommandLineOption demo(QStringLiteral("demo"),
                                  Application::tr("Open a fresh copy of the invented gym."));
    const QCommandLineOption screenshot(
        QStringLiteral("screenshot"),
        Application::tr("Write a PNG of every page into DIR and end."),
        QStringLiteral("DIR"));
    const QCommandLineOption theme(QStringLiteral("theme"),
                                   Application::tr("light, dark or desktop (the default)."),
                                   QStringLiteral("THEME"),
                                   QStringLiteral("desktop"));
    parser.addOptions({demo, screenshot, theme});
    addReportOptions(parser);
    parser.addPositionalArgument(QStringLiteral("logbook"),
                                 Application::tr("The logbook to open."),
                                 QStringLiteral("[LOGBOOK]"));
    parser.process(application);

    DesktopOptions options;
    options.logbook = parser.positionalArguments().value(0);
    options.demo = parser.isSet(demo);
    options.screenshots = parser.value(screenshot);
    options.report = reportOrder(parser);
    const QString wanted = parser.value(theme);
    if (wanted == QLatin1String("light")) {
        options.theme = ui::ThemeChoice::Light;
    } else if (wanted == QLatin1String("dark")) {
        options.theme = ui::ThemeChoice::Dark;
    } else if (wanted != QLatin1String("desktop")) {
        std::fprintf(
            stderr, "--theme takes light, dark or desktop, not '%s'.\n", qPrintable(wanted));
        return 2;
    }
    return application.run(options);

} catch (const std::exception& error) {
    std::fprintf(stderr, "Levelbar ends: %s\n", error.what());
    return 1;
}
