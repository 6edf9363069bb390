// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/screenshots.h"

#include "ui/floor/floor_page.h"
#include "ui/main_window.h"
#include "ui/theme.h"

#include <QApplication>
#include <QComboBox>
#include <QDateEdit>
#include <QDir>
#include <QElapsedTimer>
#include <QPixmap>
#include <QPushButton>
#include <QTabWidget>

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

bool save(QWidget& window, const QString& path)
{
    const bool isDone = window.grab().save(path, "PNG");
    if (!isDone) {
        std::fprintf(stderr, "%s could not be written.\n", qPrintable(path));
    }
    return isDone;
}

// The card and the form behind it, about the person whose page is in front.
bool saveEmergency(ui::MainWindow& window, const QString& folder, const QString& theme)
{
    window.openEmergency();
    auto* card = window.findChild<QWidget*>(QStringLiteral("emergencyWindow"));
    settle(window);
    bool isDone = save(*card, QDir(folder).filePath(QStringLiteral("emergency-%1.png").arg(theme)));
    card->findChild<QPushButton*>(QStringLiteral("emergencyReport"))->click();
    settle(window);
    isDone =
        save(*card, QDir(folder).filePath(QStringLiteral("incident-%1.png").arg(theme))) && isDone;
    card->findChild<QPushButton*>(QStringLiteral("incidentLeave"))->click();
    card->close();
    return isDone;
}

// A form that a button opens.
struct Form {
    ui::MainWindow::Page page = ui::MainWindow::Today;
    const char* button = "";
    const char* form = "";
    const char* leave = ""; // closes one that is no window of its own
    const char* name = "";
};

constexpr std::array<Form, 3> kForms = {
    {{ui::MainWindow::Plan, "planCompany", "companyEditor", "", "who-with-whom"},
     {ui::MainWindow::Person, "memberChange", "personEditor", "", "person-form"},
     {ui::MainWindow::Exercises, "exerciseEditLadder", "ladderEditor", "ladderCancel", "ladder"}}};

bool saveForm(ui::MainWindow& window, const Form& form, const QString& folder, const QString& theme)
{
    window.goTo(form.page);
    settle(window);
    window.findChild<QPushButton*>(QLatin1String(form.button))->click();
    auto* shown = window.findChild<QWidget*>(QLatin1String(form.form));
    settle(window);
    const QString name = QStringLiteral("%1-%2.png").arg(QLatin1String(form.name), theme);
    const bool isDone = save(*shown, QDir(folder).filePath(name));
    if (shown->isWindow()) {
        shown->close();
    } else {
        window.findChild<QPushButton*>(QLatin1String(form.leave))->click();
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

void showTab(ui::MainWindow& window, int tab)
{
    if (auto* tabs = window.findChild<QTabWidget*>(QStringLiteral("memberPictures"))) {
        tabs->setCurrentIndex(tab);
    }
}

struct Shot {
    ui::MainWindow::Page page = ui::MainWindow::Today;
    const char* name = "";
    int tab = 0; // of a person's pictures
};

constexpr std::array<Shot, 14> kPages = {{{ui::MainWindow::Today, "today"},
                                          {ui::MainWindow::People, "people"},
                                          {ui::MainWindow::Timetable, "timetable"},
                                          {ui::MainWindow::Floor, "floor"},
                                          {ui::MainWindow::Plan, "plan"},
                                          {ui::MainWindow::Sides, "sides"},
                                          {ui::MainWindow::Exercises, "exercises"},
                                          {ui::MainWindow::Gym, "gym"},
                                          {ui::MainWindow::Reports, "reports"},
                                          {ui::MainWindow::Person, "person"},
                                          {ui::MainWindow::Person, "person-sides", 1},
                                          {ui::MainWindow::Person, "person-tests", 2},
                                          {ui::MainWindow::Person, "person-sets", 3},
                                          {ui::MainWindow::Person, "person-body-weight", 4}}};

// The last class that was written down: a full floor.
void showLoggedClass(ui::MainWindow& window)
{
    auto* day = window.findChild<QDateEdit*>(QStringLiteral("floorDay"));
    auto* groupClass = window.findChild<QComboBox*>(QStringLiteral("floorClass"));
    if (day != nullptr && groupClass != nullptr) {
        day->setDate(QDate(2026, 11, 20));
        groupClass->setCurrentText(QStringLiteral("Friday Mix"));
    }
}

bool savePage(ui::MainWindow& window, const Shot& shot, const QString& folder, const QString& look)
{
    showTab(window, shot.tab);
    if (shot.page == ui::MainWindow::Person && window.review().current()) {
        window.openMember(somebody(window.review().current()->review));
    } else {
        window.goTo(shot.page);
    }
    if (shot.page == ui::MainWindow::Floor) {
        showLoggedClass(window);
    }
    const bool isSettled = settle(window);
    const QString name = QStringLiteral("%1-%2.png").arg(QLatin1String(shot.name), look);
    return save(window, QDir(folder).filePath(name)) && isSettled;
}

} // namespace

bool writeScreenshots(QApplication& application, ui::MainWindow& window, const QString& folder)
{
    if (!QDir().mkpath(folder)) {
        std::fprintf(stderr, "%s cannot be made a folder.\n", qPrintable(folder));
        return false;
    }
    constexpr std::array<std::pair<ui::ThemeChoice, const char*>, 2> kThemes = {
        {{ui::ThemeChoice::Light, "light"}, {ui::ThemeChoice::Dark, "dark"}}};
    window.show();
    bool isDone = settle(window);
    for (const auto& [theme, name] : kThemes) {
        const QString themeName = QLatin1String(name);
        ui::applyTheme(application, theme);
        for (const QSize size : kSizes) {
            window.resize(size);
            const QString look =
                QStringLiteral("%1-%2x%3").arg(themeName).arg(size.width()).arg(size.height());
            for (const Shot& shot : kPages) {
                isDone = savePage(window, shot, folder, look) && isDone;
            }
        }
        isDone = saveEmergency(window, folder, themeName) && isDone;
        for (const Form& form : kForms) {
            isDone = saveForm(window, form, folder, themeName) && isDone;
        }
    }
    return isDone;
}

} // namespace levelbar
