// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>

namespace levelbar::ui {

namespace {

QString filled(std::string_view text, const std::vector<std::string>& arguments)
{
    QString result = word(text);
    for (std::size_t i = arguments.size(); i-- > 0;) {
        result.replace(QStringLiteral("%%1").arg(i + 1), word(arguments[i]));
    }
    return result;
}

} // namespace

QString dayText(Day day)
{
    const CivilDate date = civilDate(day);
    return QLocale().toString(QDate(date.year, date.month, date.day), QStringLiteral("d MMM yyyy"));
}

QString plain(std::string_view text)
{
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString word(std::string_view text)
{
    const std::string owned(text);
    return QCoreApplication::translate("core", owned.c_str());
}

QString words(const Phrase& phrase)
{
    return filled(phrase.text, phrase.arguments);
}

QString words(const std::vector<Phrase>& phrases)
{
    QString all;
    for (const Phrase& phrase : phrases) {
        all += (all.isEmpty() ? QString() : QStringLiteral(" ")) + words(phrase);
    }
    return all;
}

QString words(const Fault& fault)
{
    return filled(sentenceTemplate(fault.code), fault.arguments);
}

QString words(const Attention& attention)
{
    return filled(attentionTemplate(attention), attention.arguments);
}

} // namespace levelbar::ui
