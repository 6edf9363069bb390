// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/theme.h"

#include <QApplication>
#include <QDBusConnection>
#include <QDBusMessage>
#include <QDBusVariant>
#include <QFont>
#include <QStyleFactory>

#include <optional>

namespace levelbar::ui {

namespace {

constexpr int kDarkBelow = 128; // lightness of the window, of 255
constexpr int kPortalMilliseconds = 300;

QPalette paletteOf(QColor window, QColor base, QColor text, QColor raised, QColor accent)
{
    QPalette palette;
    palette.setColor(QPalette::Window, window);
    palette.setColor(QPalette::WindowText, text);
    palette.setColor(QPalette::Base, base);
    palette.setColor(QPalette::AlternateBase, raised);
    palette.setColor(QPalette::Text, text);
    palette.setColor(QPalette::Button, raised);
    palette.setColor(QPalette::ButtonText, text);
    palette.setColor(QPalette::ToolTipBase, base);
    palette.setColor(QPalette::ToolTipText, text);
    palette.setColor(QPalette::Highlight, accent);
    palette.setColor(QPalette::HighlightedText, Qt::white);
    palette.setColor(QPalette::Link, accent);
    QColor faint = text;
    faint.setAlphaF(0.62F);
    palette.setColor(QPalette::PlaceholderText, faint);
    for (const auto role : {QPalette::Text, QPalette::WindowText, QPalette::ButtonText}) {
        palette.setColor(QPalette::Disabled, role, faint);
    }
    return palette;
}

// The desktop's wish by the freedesktop portal (org.freedesktop.appearance): 1 = dark, 2 = light.
std::optional<bool> portalWantsDark()
{
    const QDBusConnection bus = QDBusConnection::sessionBus();
    if (!bus.isConnected()) {
        return std::nullopt;
    }
    QDBusMessage ask =
        QDBusMessage::createMethodCall(QStringLiteral("org.freedesktop.portal.Desktop"),
                                       QStringLiteral("/org/freedesktop/portal/desktop"),
                                       QStringLiteral("org.freedesktop.portal.Settings"),
                                       QStringLiteral("Read"));
    ask << QStringLiteral("org.freedesktop.appearance") << QStringLiteral("color-scheme");
    const QDBusMessage reply = bus.call(ask, QDBus::Block, kPortalMilliseconds);
    if (reply.type() != QDBusMessage::ReplyMessage || reply.arguments().isEmpty()) {
        return std::nullopt;
    }
    const QVariant inner = reply.arguments().constFirst().value<QDBusVariant>().variant();
    const uint wish = inner.canConvert<QDBusVariant>()
                          ? inner.value<QDBusVariant>().variant().toUInt()
                          : inner.toUInt();
    return wish == 0 ? std::nullopt : std::optional(wish == 1);
}

} // namespace

bool isDark(const QPalette& palette)
{
    return palette.color(QPalette::Window).lightness() < kDarkBelow;
}

QPalette lightPalette()
{
    return paletteOf(QColor(0xF3, 0xF2, 0xEC),
                     QColor(0xFF, 0xFF, 0xFF),
                     QColor(0x1A, 0x1D, 0x1F),
                     QColor(0xE8, 0xE6, 0xDD),
                     QColor(0x2F, 0x5D, 0x50));
}

QPalette darkPalette()
{
    return paletteOf(QColor(0x1C, 0x20, 0x21),
                     QColor(0x13, 0x16, 0x17),
                     QColor(0xF1, 0xF0, 0xEA),
                     QColor(0x2A, 0x2F, 0x31),
                     QColor(0x3E, 0x7D, 0x6B));
}

Colours colours(const QPalette& palette)
{
    Colours result;
    result.left = QColor(0x00, 0x72, 0xB2);  // Okabe-Ito blue
    result.right = QColor(0xD5, 0x5E, 0x00); // Okabe-Ito vermilion
    if (isDark(palette)) {
        result.band = QColor(0xF1, 0xF0, 0xEA, 46);
        result.quiet = QColor(0xBD, 0xBF, 0xBA);
        result.grid = QColor(0xF1, 0xF0, 0xEA, 40);
        result.warning = QColor(0xF0, 0xE4, 0x42); // Okabe-Ito yellow
        result.shade = QColor(0xF1, 0xF0, 0xEA, 22);
    } else {
        result.band = QColor(0x1A, 0x1D, 0x1F, 34);
        result.quiet = QColor(0x50, 0x55, 0x57);
        result.grid = QColor(0x1A, 0x1D, 0x1F, 36);
        result.warning = QColor(0x8F, 0x1D, 0x1D);
        result.shade = QColor(0x1A, 0x1D, 0x1F, 16);
    }
    return result;
}

void applyTheme(QApplication& application, ThemeChoice choice)
{
    bool wantsDark = choice == ThemeChoice::Dark;
    if (choice == ThemeChoice::Desktop) {
        wantsDark = portalWantsDark().value_or(isDark(QGuiApplication::palette()));
    }
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    QApplication::setPalette(wantsDark ? darkPalette() : lightPalette());
    constexpr int kPointSize = 11; // read from two steps away
    QFont font = QApplication::font();
    font.setPointSize(kPointSize);
    QApplication::setFont(font);
    application.setStyleSheet(QStringLiteral(
        "QTableView { gridline-color: palette(alternate-base); }"
        "QHeaderView::section { padding: 6px; border: none; font-weight: 600; }"
        "QLineEdit, QComboBox, QDateEdit, QSpinBox { min-height: 30px; padding: 2px 6px; }"
        "QPushButton { min-height: 30px; padding: 2px 14px; }"));
}

} // namespace levelbar::ui
