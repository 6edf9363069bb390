// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>
#include <QByteArray>
#include <QLocale>
#include <QSettings>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QtTest/QTest>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cstdio>

namespace {

// Qt says these in a headless run; none of them is about our code.
constexpr std::array<const char*, 3> kHarmless = {"does not support propagateSizeHints",
                                                  "XDG_RUNTIME_DIR not set",
                                                  "not accepted by receiving widget"};

// Bad connections, layouts and models tell of themselves by a warning only.
void failOnWarning(QtMsgType type, const QMessageLogContext& /*context*/, const QString& text)
{
    const bool isBad = type != QtDebugMsg && type != QtInfoMsg;
    for (const char* harmless : kHarmless) {
        if (text.contains(QLatin1String(harmless))) {
            return;
        }
    }
    if (isBad && ::testing::UnitTest::GetInstance()->current_test_info() != nullptr) {
        ADD_FAILURE() << "Qt warned: " << text.toStdString();
    } else {
        std::fprintf(stderr, "%s\n", qPrintable(text));
    }
}

} // namespace

int main(int argc, char** argv)
{
    // The build asks the program for its tests, also where there is no display.
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    qputenv("TZ", "UTC");
    // Settings of the tests must not meet those of the one who runs them.
    const QTemporaryDir settings;
    QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope, settings.path());
    ::testing::InitGoogleMock(&argc, argv);
    QStandardPaths::setTestModeEnabled(true);
    QLocale::setDefault(QLocale::c());
    const QApplication application(argc, argv);
    QCoreApplication::setOrganizationName(QStringLiteral("levelbar-tests"));
    QCoreApplication::setApplicationName(QStringLiteral("levelbar-tests"));
    qInstallMessageHandler(&failOnWarning);
    return RUN_ALL_TESTS();
}
