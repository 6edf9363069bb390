// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/screenshots.h"

#include "ui/floor/floor_page.h"
#include "ui/main_window.h"
#include "ui/theme.h"

#include <QApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QPixmap>

#include <array>
#include <cstdio>

namespace levelbar {

namespace {

constexpr int kMostWaitMilliseconds = 60'000;
constexpr std::array kSizes = {QSize(1366, 768), QSize(1920, 1080)};

// Until the review is there and all is painted.
bool settle(ui::MainWindow& window)
{
    QElapsedTimer timer;
    timer.start();
    while (!window.review().current() && timer.elapsed() < kMostWaitMilliseconds) {
        QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
    }
    for (int round = 0; round < 5; ++round) {
        QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
    }
    return window.review().current() != nullptr;
}

bool save(ui::MainWindow& window, const QString& path)
{
    const bool isDone = window.grab().save(path, "PNG");
    if (!isDone) {
        std::fprintf(stderr, "%s could not be written.\n", qPrintable(path));
    }
    return isDone;
}

// The person most in need of a look makes the best picture.
MemberId somebody(const Review& review)
{
    for (const MemberReview& member : review.members) {
        for (const Attention& attention : member.attention) {
            if (attention.kind == AttentionKind::Imbalance && !member.strength.empty()) {
                return member.member.id;
            }
        }
    }
    return review.members.empty() ? MemberId{} : review.members.front().member.id;
}

} // namespace

bool writeScreenshots(QApplication& application, ui::MainWindow& window, const QString& folder)
{
    if (!QDir().mkpath(folder)) {
        std::fprintf(stderr, "%s cannot be made a folder.\n", qPrintable(folder));
        return false;
    }
    constexpr std::array<std::pair<ui::MainWindow::Page, const char*>, 4> kPages = {
        {{ui::MainWindow::People, "people"},
         {ui::MainWindow::Floor, "floor"},
         {ui::MainWindow::Sides, "sides"},
         {ui::MainWindow::Person, "person"}}};
    constexpr std::array<std::pair<ui::ThemeChoice, const char*>, 2> kThemes = {
        {{ui::ThemeChoice::Light, "light"}, {ui::ThemeChoice::Dark, "dark"}}};
    window.show();
    bool isDone = settle(window);
    for (const auto& [theme, themeName] : kThemes) {
        ui::applyTheme(application, theme);
        for (const QSize size : kSizes) {
            window.resize(size);
            for (const auto& [page, pageName] : kPages) {
                if (page == ui::MainWindow::Person && window.review().current()) {
                    window.openMember(somebody(window.review().current()->review));
                } else {
                    window.goTo(page);
                }
                isDone = settle(window) && isDone;
                const QString name = QStringLiteral("%1-%2-%3x%4.png")
                                         .arg(QLatin1String(pageName), QLatin1String(themeName))
                                         .arg(size.width())
                                         .arg(size.height());
                isDone = save(window, QDir(folder).filePath(name)) && isDone;
            }
        }
    }
    return isDone;
}

} // namespace levelbar
