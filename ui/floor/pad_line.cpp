// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/pad_line.h"

#include "ui/floor/floor_colours.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>

#include <optional>

namespace levelbar::ui {

namespace {

constexpr double kTypedScale = 1.7;
constexpr double kQuestionScale = 1.25;
constexpr int kTypedDigits = 9;

std::optional<PadKey> padKey(const QKeyEvent& event)
{
    const auto modifiers = event.modifiers() & ~Qt::KeypadModifier & ~Qt::ShiftModifier;
    if (modifiers != Qt::NoModifier) {
        return std::nullopt;
    }
    PadKey key;
    key.isRepeat = event.isAutoRepeat();
    switch (event.key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        key.kind = PadKey::Kind::Enter;
        return key;
    case Qt::Key_Backspace:
        key.kind = PadKey::Kind::Erase;
        return key;
    case Qt::Key_Escape:
        key.kind = PadKey::Kind::Abandon;
        return key;
    default:
        break;
    }
    const QString text = event.text().toLower();
    if (text.size() != 1 || !text.front().isPrint() || text.front().isSpace()) {
        return std::nullopt;
    }
    key.kind = PadKey::Kind::Character;
    key.character = text.front().toLatin1();
    return key;
}

} // namespace

PadLine::PadLine(QWidget* parent)
    : QFrame(parent)
    , m_typed(new QLabel)
    , m_hint(new QLabel)
{
    setObjectName(QStringLiteral("padLine"));
    setAccessibleName(tr("Number pad"));
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_InputMethodEnabled, false);
    m_typed->setObjectName(QStringLiteral("padTyped"));
    m_hint->setObjectName(QStringLiteral("padHint"));
    m_hint->setWordWrap(true);
    m_hint->setMinimumWidth(1);
    QFont large = m_typed->font();
    large.setPointSizeF(large.pointSizeF() * kTypedScale);
    large.setBold(true);
    m_typed->setFont(large);
    m_typed->setFixedWidth(QFontMetrics(large).horizontalAdvance(QLatin1Char('0')) * kTypedDigits);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(12, 4, 12, 4);
    layout->addWidget(m_typed);
    layout->addWidget(m_hint, 1);
    showTyped({}, {});
}

void PadLine::showTyped(const QString& typed, const QString& question)
{
    m_question = question;
    m_typed->setText(typed + QLatin1Char('_'));
    setAccessibleDescription(typed);
    showHint();
}

void PadLine::showHint()
{
    QFont font = this->font();
    if (!m_question.isEmpty()) {
        font.setPointSizeF(font.pointSizeF() * kQuestionScale);
        font.setBold(true);
        m_hint->setText(m_question);
    } else if (!hasFocus()) {
        m_hint->setText(tr("Esc brings the keys here: *3 rack, /14 bib, Enter as planned."));
    } else {
        m_hint->setText(
            tr("Enter as planned · 9 or 9.2 · 0 failed · ** round · *3 rack · /14 bib · + − load · "
               "// take back · .1 not clean · .2 easy day · .3.6.2.1 pain · .4 other, .4.14 swap · "
               ".5 late · .6 left · .7 kit gone · .8.23 new · .0 catch up"));
    }
    m_hint->setFont(font);
}

bool PadLine::hear(const QKeyEvent& event)
{
    if (event.matches(QKeySequence::Undo)) {
        if (!event.isAutoRepeat()) {
            Q_EMIT takeBackWanted();
        }
        return true;
    }
    const auto key = padKey(event);
    if (key) {
        Q_EMIT pressed(*key);
    }
    return key.has_value();
}

bool PadLine::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride) {
        const auto& key = *static_cast<QKeyEvent*>(event);
        if (key.matches(QKeySequence::Undo) || padKey(key)) {
            event->accept();
            return true;
        }
    }
    return QFrame::event(event);
}

void PadLine::keyPressEvent(QKeyEvent* event)
{
    if (hear(*event)) {
        event->accept();
        return;
    }
    QFrame::keyPressEvent(event);
}

void PadLine::focusInEvent(QFocusEvent* event)
{
    QFrame::focusInEvent(event);
    showHint();
    update();
}

void PadLine::focusOutEvent(QFocusEvent* event)
{
    QFrame::focusOutEvent(event);
    showHint();
    update();
}

void PadLine::paintEvent(QPaintEvent* /*event*/)
{
    QPainter painter(this);
    const bool isHere = hasFocus();
    painter.fillRect(rect(),
                     isHere ? palette().color(QPalette::Base) : groupColour(palette(), true));
    painter.setPen(QPen(isHere ? palette().color(QPalette::Highlight) : lineColour(palette()),
                        isHere ? 3 : 1));
    painter.drawRect(rect().adjusted(1, 1, -2, -2));
}

} // namespace levelbar::ui
