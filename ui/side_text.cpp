// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/side_text.h"

#include "ui/words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include <cmath>

namespace levelbar::ui {

namespace {

struct SideText {
    Q_DECLARE_TR_FUNCTIONS(SideText)
};

QString joined(const QStringList& parts)
{
    QStringList said = parts;
    said.removeAll(QString());
    return said.join(QLatin1Char(' '));
}

} // namespace

QString sideSentence(const SideReview& side)
{
    if (side.tier != SideTier::SendOn) {
        return words(phrases(side));
    }
    const double percent = std::abs(side.differencePercent.value);
    const QString size = QLocale().toString(std::round(percent), 'f', 0);
    return side.weaker == Side::Left ? SideText::tr("Left weaker by about %1 %.").arg(size)
                                     : SideText::tr("Right weaker by about %1 %.").arg(size);
}

QString listedText(const SideReview& side)
{
    return joined(
        {sideSentence(side),
         words(listingPhrases(side)),
         words(sincePhrases(side.listing)),
         side.listing.why == SideWhy::KnownReason ? QString() : words(reasonPhrases(side))});
}

QString sideStory(const SideReview& side, Day asOf)
{
    const Phrase ago = agoPhrase(asOf - side.lastPair);
    return joined(
        {sideSentence(side),
         SideText::tr("Built on %n days.", nullptr, side.days),
         SideText::tr("The last: %1.").arg(words(ago)),
         words(listingPhrases(side)),
         words(sincePhrases(side.listing)),
         words(leavingPhrases(side)),
         side.listing.why == SideWhy::KnownReason ? QString() : words(reasonPhrases(side)),
         words(baselinePhrases(side))});
}

} // namespace levelbar::ui
