// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/member_sides_chart.h"

#include "ui/charts/member_sides_picture.h"
#include "ui/side_text.h"
#include "ui/words.h"

#include <QKeyEvent>
#include <QLabel>
#include <QLocale>
#include <QMouseEvent>
#include <QPainter>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace levelbar::ui {

namespace {

constexpr int kLeastHeight = 220;

} // namespace

MemberSidesChart::MemberSidesChart(QWidget* parent)
    : QWidget(parent)
    , m_picture(new QWidget(this))
    , m_readOut(new QLabel(this))
{
    setFocusPolicy(Qt::StrongFocus);
    m_picture->setObjectName(QStringLiteral("memberSidesPicture"));
    m_picture->setMouseTracking(true);
    m_picture->setMinimumHeight(kLeastHeight);
    m_picture->installEventFilter(this);
    m_readOut->setObjectName(QStringLiteral("memberSidesReadOut"));
    m_readOut->setTextFormat(Qt::PlainText);
    m_readOut->setWordWrap(true);
    m_readOut->setMinimumHeight(m_readOut->fontMetrics().height() + 8);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_picture, 1);
    layout->addWidget(m_readOut);
}

void MemberSidesChart::show(const MemberSidesFigure& figure)
{
    m_figure = figure;
    m_current.reset();
    m_days.clear();
    for (const SideDot& dot : figure.dots) {
        m_days.push_back(dot.dot.day);
    }
    for (const PairDot& pair : figure.pairs) {
        m_days.push_back(pair.day);
    }
    std::sort(m_days.begin(), m_days.end());
    m_days.erase(std::unique(m_days.begin(), m_days.end()), m_days.end());
    m_readOut->setText(m_days.empty()
                           ? tr("Nothing to show for this measure.")
                           : tr("Point at a day, or step with the left and right keys."));
    const std::string& name = figure.review.measure.name;
    setAccessibleName(name.empty() ? tr("Left and right through time") : plain(name));
    setAccessibleDescription(
        name.empty() ? QString() : tr("%1: %2").arg(plain(name), sideSentence(figure.review)));
    m_picture->update();
}

QString MemberSidesChart::readOut() const
{
    return m_readOut->text();
}

double MemberSidesChart::differenceHeight(double percent) const
{
    return MemberSidesPicture(m_figure, m_picture->rect(), font()).differenceHeight(percent);
}

bool MemberSidesChart::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_picture && event->type() == QEvent::Paint) {
        paintPicture();
        return true;
    }
    if (watched == m_picture &&
        (event->type() == QEvent::MouseMove || event->type() == QEvent::MouseButtonPress)) {
        point(static_cast<QMouseEvent*>(event)->position().x());
    }
    return QWidget::eventFilter(watched, event);
}

void MemberSidesChart::paintPicture()
{
    QPainter painter(m_picture);
    painter.setFont(font());
    painter.fillRect(m_picture->rect(), palette().base());
    if (hasFocus()) {
        painter.setPen(QPen(palette().color(QPalette::Highlight), 2.0));
        painter.drawRect(m_picture->rect().adjusted(1, 1, -1, -1));
    }
    if (m_days.empty()) {
        painter.setPen(palette().color(QPalette::Text));
        painter.drawText(m_picture->rect(),
                         Qt::AlignCenter | Qt::TextWordWrap,
                         tr("Not measured on both sides on one day in the last four months."));
        return;
    }
    const auto chosen = m_current ? std::optional(m_days[*m_current]) : std::nullopt;
    MemberSidesPicture(m_figure, m_picture->rect(), font()).paint(painter, palette(), chosen);
}

void MemberSidesChart::point(double x)
{
    if (m_days.empty()) {
        return;
    }
    const MemberSidesPicture picture(m_figure, m_picture->rect(), font());
    const auto nearest = std::min_element(m_days.begin(), m_days.end(), [&](Day a, Day b) {
        return std::abs(picture.across(a) - x) < std::abs(picture.across(b) - x);
    });
    const auto place = static_cast<std::size_t>(nearest - m_days.begin());
    if (m_current != place) {
        choose(place);
    }
}

void MemberSidesChart::keyPressEvent(QKeyEvent* event)
{
    const auto last = static_cast<int>(m_days.size()) - 1;
    const auto step = [&](int direction) {
        const int now = m_current ? static_cast<int>(*m_current) : (direction < 0 ? last + 1 : -1);
        return std::clamp(now + direction, 0, last);
    };
    int wanted = -1;
    switch (event->key()) {
    case Qt::Key_Left:
        wanted = step(-1);
        break;
    case Qt::Key_Right:
        wanted = step(1);
        break;
    case Qt::Key_Home:
        wanted = 0;
        break;
    case Qt::Key_End:
        wanted = last;
        break;
    default:
        QWidget::keyPressEvent(event);
        return;
    }
    if (last >= 0) {
        choose(static_cast<std::size_t>(wanted));
    }
}

void MemberSidesChart::choose(std::size_t place)
{
    m_current = place;
    const QString text = textOf(m_days[place]);
    m_readOut->setText(text);
    m_readOut->setAccessibleDescription(text);
    m_picture->update();
}

QString MemberSidesChart::textOf(Day day) const
{
    const auto pair = std::find_if(m_figure.pairs.begin(),
                                   m_figure.pairs.end(),
                                   [day](const PairDot& p) { return p.day == day; });
    if (pair != m_figure.pairs.end()) {
        return tr("%1: %2").arg(dayText(day), words(phrases(*pair, m_figure.unit)));
    }
    QStringList parts;
    for (const Side side : {Side::Left, Side::Right}) {
        const SideDot* best = nullptr;
        for (const SideDot& dot : m_figure.dots) {
            const bool isHere = dot.dot.day == day && dot.side == side;
            if (isHere && (best == nullptr || dot.dot.kilograms > best->dot.kilograms)) {
                best = &dot;
            }
        }
        if (best != nullptr) {
            const QString amount =
                tr("%1 %2", "a number and its unit")
                    .arg(locale().toString(best->dot.kilograms, 'f', 1), plain(m_figure.unit));
            parts << (best->dot.isBound ? tr("%1 at least %2") : tr("%1 %2"))
                         .arg(word(sideWord(side)), amount);
        }
    }
    return tr("%1: %2; no pair that can be compared.")
        .arg(dayText(day), parts.join(QStringLiteral(", ")));
}

} // namespace levelbar::ui
