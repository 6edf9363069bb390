// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_status.h"

#include "core/exercise/done_set.h"
#include "ui/floor/floor_cell_delegate.h"
#include "ui/floor/floor_colours.h"
#include "ui/floor/floor_words.h"

#include <QAccessible>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QVBoxLayout>

#include <array>

namespace levelbar::ui {

namespace {

constexpr int kMark = 10;
constexpr int kGap = 6;
constexpr int kBetween = 18;
constexpr double kPlaceScale = 1.45;
constexpr double kSaidScale = 1.15;

struct LegendEntry {
    HowKnown known;
    bool isFailed;
};

constexpr std::array<LegendEntry, 5> kLegend = {{{HowKnown::Counted, false},
                                                 {HowKnown::Accepted, false},
                                                 {HowKnown::Group, false},
                                                 {HowKnown::Sheet, false},
                                                 {HowKnown::Counted, true}}};

QString legendText(const LegendEntry& entry)
{
    return entry.isFailed ? KnownLegend::tr("tried and failed") : knownText(entry.known);
}

void enlarge(QLabel* label, double scale)
{
    QFont font = label->font();
    font.setPointSizeF(font.pointSizeF() * scale);
    label->setFont(font);
}

} // namespace

KnownLegend::KnownLegend(QWidget* parent)
    : QWidget(parent)
{
    setObjectName(QStringLiteral("knownLegend"));
    QString words;
    for (const LegendEntry& entry : kLegend) {
        words += (words.isEmpty() ? QString() : QStringLiteral(", ")) + legendText(entry);
    }
    setAccessibleName(tr("How a set is known: %1").arg(words));
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

QSize KnownLegend::sizeHint() const
{
    int width = 0;
    for (const LegendEntry& entry : kLegend) {
        width += kMark + kGap + fontMetrics().horizontalAdvance(legendText(entry)) + kBetween;
    }
    return {width, fontMetrics().height() + kGap};
}

void KnownLegend::paintEvent(QPaintEvent* /*event*/)
{
    QPainter painter(this);
    const QColor ink = palette().color(QPalette::WindowText);
    painter.setPen(ink);
    int x = 0;
    for (const LegendEntry& entry : kLegend) {
        const QRectF mark(x, (height() - kMark) / 2.0, kMark, kMark);
        paintKnownMark(painter, mark, entry.known, entry.isFailed, ink);
        x += kMark + kGap;
        const QString text = legendText(entry);
        const int width = fontMetrics().horizontalAdvance(text);
        painter.drawText(QRect(x, 0, width + 1, height()), Qt::AlignLeft | Qt::AlignVCenter, text);
        x += width + kBetween;
    }
}

FloorStatus::FloorStatus(QWidget* parent)
    : QWidget(parent)
    , m_place(new QLabel)
    , m_said(new QLabel)
    , m_progress(new QLabel)
{
    m_place->setObjectName(QStringLiteral("floorPlace"));
    m_said->setObjectName(QStringLiteral("floorSaid"));
    m_progress->setObjectName(QStringLiteral("floorProgress"));
    m_place->setTextFormat(Qt::RichText);
    m_said->setTextFormat(Qt::PlainText);
    m_said->setWordWrap(true);
    m_place->setWordWrap(true);
    for (QLabel* label : {m_place, m_said}) {
        label->setMinimumWidth(1); // a long line must not widen the window
    }
    enlarge(m_place, kPlaceScale);
    enlarge(m_said, kSaidScale);
    auto* caution = new QLabel(
        tr("Pain stops the set. A maximal try needs clearance, and a spotter or safeties."));
    caution->setObjectName(QStringLiteral("floorCaution"));
    caution->setWordWrap(true);

    auto* first = new QHBoxLayout;
    first->addWidget(m_place, 1);
    first->addWidget(m_progress);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(first);
    layout->addWidget(m_said);
    layout->addWidget(caution);
}

void FloorStatus::showPlace(const QString& person, const QString& set, const QString& plan)
{
    if (person.isEmpty()) {
        m_place->setText(set.toHtmlEscaped());
        return;
    }
    QString text = tr("<b>%1</b> · %2").arg(person.toHtmlEscaped(), set.toHtmlEscaped());
    if (!plan.isEmpty()) {
        text += tr(" · %1").arg(plan.toHtmlEscaped());
    }
    m_place->setText(text);
}

void FloorStatus::say(const QString& sentence, bool isRefused)
{
    m_said->setText(sentence);
    m_isRefused = isRefused;
    showSaid();
    QAccessibleEvent event(m_said, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
}

void FloorStatus::showProgress(int known, int all)
{
    m_progress->setText(
        all == 0 ? QString()
                 : tr("%1 of %n sets known", nullptr, all).arg(QLocale().toString(known)));
}

void FloorStatus::changeEvent(QEvent* event)
{
    if (event->type() == QEvent::PaletteChange) {
        showSaid();
    }
    QWidget::changeEvent(event);
}

void FloorStatus::showSaid()
{
    const QColor wanted =
        m_isRefused ? faultColour(palette()) : palette().color(QPalette::WindowText);
    QPalette colours = m_said->palette();
    if (colours.color(QPalette::WindowText) != wanted) {
        colours.setColor(QPalette::WindowText, wanted);
        m_said->setPalette(colours);
    }
}

} // namespace levelbar::ui
